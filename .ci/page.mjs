// Opens a web page that firstboard wrote in headless Chromium, at the width of
// a phone, of a tablet and for print: nothing runs over, nothing complains, no
// request leaves the page, and axe-core finds no violation (left out with layout: it takes minutes on 200 areas).
// Usage: node page.mjs PAGE.html ANSWER.json [layout], with playwright-core and axe-core beside it.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'

const require = createRequire(process.cwd() + '/')
const { chromium } = require('playwright-core')
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8')
const url = pathToFileURL(process.argv[2]).href
const answer = JSON.parse(readFileSync(process.argv[3], 'utf8'))

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
})
const faults = []
for (const [name, width] of [['phone', 375], ['tablet', 820], ['print', 1050]]) {
  const page = await browser.newPage({ viewport: { width, height: 900 } })
  page.on('console', (m) => m.type() === 'error' && faults.push(`${name}: console: ${m.text()}`))
  page.on('pageerror', (e) => faults.push(`${name}: ${e}`))
  page.on('request', (r) => r.url() !== url && !r.url().startsWith('data:') && faults.push(`${name}: asked for ${r.url()}`))
  if (name === 'print') await page.emulateMedia({ media: 'print' })
  await page.goto(url)
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  if (over > 0) faults.push(`${name}: runs over by ${over} dots`)
  const text = (await page.evaluate(() => document.body.textContent)).replace(/\s+/g, ' ')
  for (const a of answer.areas) {
    for (const said of [a.verdict, ...a.findings.map((f) => f.reason), ...a.conditions]) {
      if (!text.includes(said.replace(/\s+/g, ' '))) faults.push(`${name}: ${a.id}: does not say ${said}`)
    }
  }
  if (name !== 'print' && process.argv[4] !== 'layout') {
    await page.evaluate(axe)
    const found = await page.evaluate(() => window.axe.run())
    for (const v of found.violations) faults.push(`${name}: ${v.id}: ${v.help} (${v.nodes[0].html.slice(0, 120)})`)
  }
  await page.close()
}
await browser.close()
console.log(`page: 3 widths, ${answer.areas.length} areas, ${faults.length} faults`)
for (const f of faults.slice(0, 20)) console.error(f)
process.exit(faults.length > 0 ? 1 : 0)
