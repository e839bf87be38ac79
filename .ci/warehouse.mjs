// Loads verdicts.jsonl into DuckDB, an engine of its own, and asks what
// README.md asks: each SELECT in it, in its order, must give these answers.
import { readFileSync } from 'node:fs'
import { isDeepStrictEqual } from 'node:util'
import { DuckDBInstance } from '@duckdb/node-api'

const db = await (await DuckDBInstance.create(':memory:')).connect()
const ask = async (sql) => (await db.runAndReadAll(sql)).getRowObjectsJson()

const expected = [
  [
    { flooring: 'ENG', areas: '2', lots: ['L1', 'L7'] },
    { flooring: 'STRIP', areas: '1', lots: ['L3'] },
    { flooring: 'TILE', areas: '1', lots: [] },
  ],
  [
    { month: '2026-03', areas: '2', meanOver: 2.95, worstOver: 3.4 },
    { month: '2026-04', areas: '2', meanOver: 5.5, worstOver: 6 },
  ],
]

const same = (what, got, want) => {
  if (isDeepStrictEqual(got, want)) return console.log(`warehouse: ${what}: as counted by hand`)
  console.error(`warehouse: ${what}: ${JSON.stringify(got)}, want ${JSON.stringify(want)}`)
  process.exitCode = 1
}

const questions = readFileSync('README.md', 'utf8').match(/^ {4}SELECT[^;]*;$/gm) ?? []
same('questions in README.md', questions.length, expected.length)
for (const [i, sql] of questions.entries()) same(`question ${i + 1}`, await ask(sql), expected[i])

// Values come as what they are, without a schema.
const types = Object.fromEntries((await ask(`DESCRIBE SELECT * FROM read_json_auto('verdicts.jsonl')`)).map((c) => [c.column_name, c.column_type]))
const wanted = {
  record: 'VARCHAR', underWaiver: 'BOOLEAN', blocking: 'VARCHAR[]', lots: 'VARCHAR[]', installOn: 'DATE', goodUntil: 'DATE',
  lastReading: 'TIMESTAMP', slabRhPct: 'DOUBLE', subfloorMcPct: 'DOUBLE',
}
same('types', Object.fromEntries(Object.keys(wanted).map((name) => [name, types[name]])), wanted)
same('lines', (await ask(`SELECT count(*) AS n, count(DISTINCT seal) AS seals FROM read_json_auto('verdicts.jsonl')`))[0], { n: '7', seals: '7' })
