// Reads a decision workbook with a library that did not write it: every sheet
// is there, and every formula has a stored value.
import ExcelJS from 'exceljs'

const book = new ExcelJS.Workbook()
await book.xlsx.readFile(process.argv[2], { ignoreNodes: ['drawing'] }) // it knows no charts
let formulas = 0
let stored = 0
let errors = 0
book.eachSheet((sheet) => {
  sheet.eachRow((row) => {
    row.eachCell((cell) => {
      if (cell.type !== ExcelJS.ValueType.Formula) return
      formulas++
      if (cell.result?.error) errors++
      else if (cell.result !== undefined) stored++ // an empty text is stored as nothing
    })
  })
})
const names = book.worksheets.map((s) => s.name)
for (const want of ['Decision', 'Area A1', 'Figures', 'As judged', 'Slab RH', 'Limits', 'Checks', 'Cautions', 'Sign-off']) {
  if (!names.includes(want)) throw new Error(`there is no sheet ${want}`)
}
console.log(`exceljs: ${names.length} sheets, ${formulas} formulas, ${stored} with a stored value, ${errors} errors`)
if (stored < formulas * 0.8 || errors > 0) process.exit(1)
