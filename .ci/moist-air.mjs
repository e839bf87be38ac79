// Compares `firstboard calc air` with the general-purpose library psychrolib,
// a second and independent route through the same handbook, on a grid of
// temperatures, humidities and pressures; then times the library on that grid.
// Usage: node moist-air.mjs FIRSTBOARD, with psychrolib installed beside it.
import { execFileSync } from 'node:child_process'
import { createRequire } from 'node:module'

const psychrolib = createRequire(process.cwd() + '/')('psychrolib')
psychrolib.SetUnitSystem(psychrolib.SI)
const firstboard = process.argv[2]

const grid = []
for (const t of [-18.5, -7, 1.5, 8, 16, 21, 27.5, 38, 55])
  for (const rh of [8, 33, 57, 81, 99])
    for (const p of [101325, 80600]) grid.push([t, rh, p])

// What each figure may differ by: the library solves dew point and wet bulb
// to 0.001 C by its own account.
const may = { dewPointC: 0.0015, wetBulbC: 0.0015, humidityRatioGPerKg: 1e-4, vaporPressurePa: 1e-3, enthalpyKJPerKg: 1e-3 }

let worst = {}
for (const [t, rh, p] of grid) {
  const out = execFileSync(firstboard, ['calc', 'air', '--json', '--temp', `${t}C`, '--rh', `${rh}%`, '--pressure', `${p}Pa`])
  const ours = JSON.parse(out)
  const w = psychrolib.GetHumRatioFromRelHum(t, rh / 100, p)
  const theirs = {
    dewPointC: psychrolib.GetTDewPointFromRelHum(t, rh / 100),
    wetBulbC: psychrolib.GetTWetBulbFromRelHum(t, rh / 100, p),
    humidityRatioGPerKg: w * 1000,
    vaporPressurePa: psychrolib.GetVapPresFromRelHum(t, rh / 100),
    enthalpyKJPerKg: psychrolib.GetMoistAirEnthalpy(t, w) / 1000,
  }
  for (const [name, tolerance] of Object.entries(may)) {
    const off = Math.abs(ours[name] - theirs[name])
    worst[name] = Math.max(worst[name] ?? 0, off)
    if (!(off <= tolerance)) {
      console.error(`${t} C, ${rh} %, ${p} Pa: ${name} is ${ours[name]}, psychrolib says ${theirs[name]}`)
      process.exitCode = 1
    }
  }
}
console.log(`moist air: ${grid.length} points compared, worst differences ${JSON.stringify(worst)}`)

const time = (what, f) => {
  const rounds = 2000
  const from = process.hrtime.bigint()
  for (let i = 0; i < rounds; i++) for (const [t, rh, p] of grid) f(t, rh / 100, p)
  console.log(`psychrolib ${what}: ${(Number(process.hrtime.bigint() - from) / (rounds * grid.length)).toFixed(0)} ns`)
}
time('dew point', (t, rh) => psychrolib.GetTDewPointFromRelHum(t, rh))
time('wet bulb', (t, rh, p) => psychrolib.GetTWetBulbFromRelHum(t, rh, p))
