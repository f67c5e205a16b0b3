// Writes demo/history.jsonl and demo/stripe.png: three invented years of Pebblewing, and a few
// weeks of Thornback. Everything is invented: no real aircraft, person, part or document.
//
//   node demo/make_history.mjs            write the two files
//   node demo/make_history.mjs --check    exit 1 unless the files are what would be written
//
// The same bytes each time: whole numbers, one seed, no clock. Each line of the result is an act
// that src/cli/demo.cpp replays; times of the engine are in tenths of an hour here.
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const OWNER = 'owner of Pebblewing (invented)';
const SECOND = 'neighbour with a mechanic\'s certificate (invented)';
const REPAIRMAN = 'repairman certificate, number invented';

// ---- seeded draws ----------------------------------------------------------------------------

let seed = 20261125;
/** A whole number from 0 to n - 1; mulberry32. */
function draw(n) {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) % n;
}

// ---- days and flights ------------------------------------------------------------------------

const daysInMonth = (year, month) => [31, year % 4 === 0 ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
const iso = (year, month, day) => `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/** The aircraft is in pieces, or being looked at: no flight. */
const grounded = [
  ['2024-02-03', '2024-02-24'],
  ['2025-02-01', '2025-02-22'],
  ['2026-02-01', '2026-02-21'],
];
const perMonth = [0, 2, 4, 6, 7, 7, 8, 7, 6, 5, 3, 3]; // none in January

function flightDays() {
  const days = [];
  for (let year = 2023; year <= 2026; ++year) {
    for (let month = 1; month <= 12; ++month) {
      const wanted = perMonth[month - 1];
      const free = [];
      for (let day = 1; day <= daysInMonth(year, month); ++day) {
        const date = iso(year, month, day);
        if (date < '2023-11-26' || date > '2026-11-21') continue;
        if (grounded.some(([from, to]) => date >= from && date <= to)) continue;
        free.push(date);
      }
      const share = Math.round((wanted * free.length) / daysInMonth(year, month));
      const some = Math.min(free.length, Math.max(0, share + (share > 3 ? draw(3) - 1 : 0)));
      for (let k = 0; k < some; ++k) days.push(...free.splice(draw(free.length), 1));
    }
  }
  days.push('2026-11-22');
  return days.sort();
}

const FIRST_ENGINE = 9304; // tenths of an hour on 2023-11-18, as the aircraft sheet says
const LAST_ENGINE = 11406;
const CHECK_FLIGHT = { date: '2026-02-21', tenths: 7 };

function flights() {
  const all = flightDays().map((date) => ({ date, tenths: 6 + draw(7) + draw(7) }));
  // Bring the sum to what the meter shows at the end, a tenth here and there.
  let over = all.reduce((sum, f) => sum + f.tenths, CHECK_FLIGHT.tenths) - (LAST_ENGINE - FIRST_ENGINE);
  while (over !== 0) {
    const one = all[draw(all.length)];
    if (over > 0 && one.tenths > 5) { --one.tenths; --over; }
    if (over < 0 && one.tenths < 26) { ++one.tenths; ++over; }
  }
  return all;
}

// ---- the script ------------------------------------------------------------------------------

const byDay = new Map(); // day -> acts, in the order in which they were entered
function on(date, act, input, more = {}) {
  if (!byDay.has(date)) byDay.set(date, []);
  byDay.get(date).push({ act, happened: date, author: OWNER, ...more, input });
  return byDay.get(date).at(-1);
}
const q = (act) => (date, input, more) => on(date, act, { aircraft: 'pebblewing', ...input }, more);
const [readCounter, quickJob, taskDone, measure, workJoint, workJoints, stageStep, planChange, changeDone] =
  ['read-counter', 'quick-job', 'task-done', 'measure', 'work-joint', 'work-joints', 'stage-step', 'plan-change', 'change-done'].map(q);

const hours = (tenths) => `${Math.floor(tenths / 10)}.${tenths % 10} h`;

// Counters as the meters show them; the airframe's meter is exchanged once.
const NEW_METER = '2025-06-14';
const shown = new Map(); // day -> readings at its end
{
  let engine = FIRST_ENGINE, airframe = 8532, starts = 1210, exchanged = false;
  const flown = [...flights(), { ...CHECK_FLIGHT, check: true }].sort((a, b) => (a.date < b.date ? -1 : 1));
  for (const f of flown) {
    if (!exchanged && f.date > NEW_METER) {
      q('replace-counter')(NEW_METER, {
        counter: 'airframe', old_last_hours: hours(airframe), new_first_hours: '0.0 h',
        reason: 'display went blank in the cold; last figure noted before',
      });
      airframe = 0;
      exchanged = true;
    }
    engine += f.tenths;
    airframe += f.tenths - 1;
    starts += 1 + (draw(6) === 0 ? 1 : 0);
    const at = [
      { counter: 'engine', hours: hours(engine) },
      { counter: 'airframe', hours: hours(airframe) },
      { counter: 'starts', count: starts },
    ];
    shown.set(f.date, at);
    if (!f.check) readCounter(f.date, { at });
  }
}
/** The engine's reading at the end of a day: of the last flight up to it. */
function engineAt(date) {
  let last = [{ counter: 'engine', hours: hours(FIRST_ENGINE) }];
  for (const [day, at] of shown) if (day <= date) last = at;
  return [last[0]];
}

// Instruments. What was calibrated anew is registered anew.
const instrument = (date, input) => on(date, 'register-instrument', input);
const meterRanges = [
  { name: '60 ohm', full_scale: '60 ohm', resolution: '0.01 ohm', of_reading: '0.9 %', counts: 3 },
  { name: '6 kohm', full_scale: '6 kohm', resolution: '0.001 kohm', of_reading: '0.9 %', counts: 2 },
  { name: '60 kohm', full_scale: '60 kohm', resolution: '0.01 kohm', of_reading: '0.9 %', counts: 2 },
  { name: '600 kohm', full_scale: '600 kohm', resolution: '0.1 kohm', of_reading: '1.5 %', counts: 3 },
  { name: '6 V', full_scale: '6 V', resolution: '0.001 V', of_reading: '0.5 %', counts: 3 },
  { name: '60 V', full_scale: '60 V', resolution: '0.01 V', of_reading: '0.5 %', counts: 3 },
];
const benchMeter = (date, calibrated, due) => instrument(date, {
  id: 'bench-meter', name: 'Bench multimeter', serial: 'BM-0417', calibrated, calibration_due: due, ranges: meterRanges,
});
benchMeter('2023-11-25', '2023-03-10', '2025-03-10');
benchMeter('2025-03-01', '2025-02-26', '2027-02-26');
instrument('2023-11-25', {
  id: 'torque-wrench', name: 'Torque wrench, 30 to 250 in-lb', serial: 'TW-88', calibrated: '2024-01-16', calibration_due: '2026-01-16',
  ranges: [{ name: '250 in-lb', full_scale: '250 in-lb', resolution: '1 in-lb', of_reading: '4 %' }],
});
instrument('2026-01-20', {
  id: 'torque-wrench', name: 'Torque wrench, 30 to 250 in-lb', serial: 'TW-88', calibrated: '2026-01-16', calibration_due: '2028-01-16',
  ranges: [{ name: '250 in-lb', full_scale: '250 in-lb', resolution: '1 in-lb', of_reading: '4 %' }],
});
instrument('2023-11-25', {
  id: 'timing-light', name: 'Timing light with degree plate', serial: 'TL-3',
  ranges: [{ name: 'degree plate', full_scale: '60 deg', resolution: '0.5 deg', counts: 1 }],
  note: 'Degree plate compared with a protractor; never calibrated.',
});
instrument('2023-11-25', {
  id: 'milliohm-meter', name: 'Four-wire milliohmmeter', serial: 'MO-12', calibrated: '2023-05-20', calibration_due: '2026-05-20',
  ranges: [{ name: '200 mohm', full_scale: '200 mohm', resolution: '0.1 mohm', of_reading: '1 %', counts: 2 }],
  note: 'Borrowed from the club.',
});
instrument('2023-11-25', {
  id: 'compression-gauges', name: 'Compression tester, two gauges', serial: 'CT-7', calibrated: '2023-10-02', calibration_due: '2027-10-02',
  ranges: [{ name: '100 psi', full_scale: '100 psi', resolution: '1 psi', of_full_scale: '2 %' }],
});
instrument('2023-11-25', {
  id: 'panel-gauges', name: 'Gauges of the panel', calibrated: '2022-02-26', calibration_due: '2024-02-29',
  ranges: [
    { name: 'oil pressure', full_scale: '115 psi', resolution: '1 psi', of_full_scale: '2 %' },
    { name: 'oil temperature', full_scale: '300 degF', resolution: '1 degF', counts: 4 },
    { name: 'fuel pressure', full_scale: '15 psi', resolution: '0.1 psi', of_full_scale: '2 %' },
    { name: 'tachometer', full_scale: '3500 rpm', resolution: '10 rpm', counts: 1 },
  ],
});
for (const [date, due] of [['2024-02-17', '2026-02-28'], ['2026-02-14', '2028-02-29']]) {
  instrument(date, {
    id: 'panel-gauges', name: 'Gauges of the panel', calibrated: date, calibration_due: due,
    ranges: [
      { name: 'oil pressure', full_scale: '115 psi', resolution: '1 psi', of_full_scale: '2 %' },
      { name: 'oil temperature', full_scale: '300 degF', resolution: '1 degF', counts: 4 },
      { name: 'fuel pressure', full_scale: '15 psi', resolution: '0.1 psi', of_full_scale: '2 %' },
      { name: 'tachometer', full_scale: '3500 rpm', resolution: '10 rpm', counts: 1 },
    ],
  });
  taskDone(date, { limit: 'gauges-compared', text: 'compared with a test gauge on a tee; within two divisions', document: 'own programme (invented), item 4' });
}

// An old logbook entry, typed in later: the day it happened is long before the day of the sheet.
on('2023-11-25', 'task-done', {
  aircraft: 'pebblewing', limit: 'cylinder-4-retorque', at: [{ counter: 'engine', hours: '820.4 h' }],
  text: 'nuts of cylinder 4 torqued once more, no movement', document: 'engine maker\'s manual (invented), rev. 4',
}, { happened: '2022-03-26' });

// Leads of both harnesses. Left lead 3 creeps up; left lead 2 has always been high.
const leadDays = ['2023-12-09', '2024-02-17', '2024-08-10', '2025-02-15', '2025-08-23', '2026-02-14', '2026-11-14'];
const leads = { // hundredths of a kilo-ohm
  'left-lead-1': [512, 515, 509, 514, 518, 516, 519],
  'left-lead-2': [774, 777, 775, 778, 780, 784, 794],
  'left-lead-3': [642, 651, 678, 705, 731, 762, 797],
  'left-lead-4': [448, 451, 447, 453, 450, 455, 452],
  'right-lead-1': [497, 501, 499, 503, 500, 505, 504],
  'right-lead-2': [562, 560, 558, 561, 563, 559, 562],
  'right-lead-3': [433, 431, 436, 434, 437, 435, 439],
  'right-lead-4': [418, 421, 420, 424, 419, 425, 423],
};
const kohm = (hundredths) => `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, '0')} kohm`;
let mistyped;
leadDays.forEach((date, k) => {
  for (const [check, values] of Object.entries(leads)) {
    const input = { check, value: kohm(values[k]), instrument: 'bench-meter', range: '60 kohm', leads: 'nulled' };
    if (date === '2025-02-15' && check === 'right-lead-2') {
      mistyped = { line: measure(date, { ...input, value: '56.1 kohm' }), right: input };
    } else {
      measure(date, input);
    }
  }
});

// What is read at each condition inspection.
const inspections = [
  { date: '2024-02-17', compression: [74, 73, 75, 72], contactor: '0.142 V', strap: '0.081 V', bond: '2.1 mohm', timing: ['25.0 deg', '24.5 deg'] },
  { date: '2025-02-15', compression: [75, 73, 74, 71], contactor: '0.171 V', strap: '0.084 V', bond: '2.3 mohm', timing: ['24.5 deg', '24.5 deg'] },
  { date: '2026-02-14', compression: [74, 72, 74, 69], contactor: '0.205 V', strap: '0.090 V', bond: '2.4 mohm', timing: ['25.0 deg', '24.5 deg'] },
];
for (const i of inspections) {
  const { date } = i;
  q('move-cowl')(date, { closed: false, by: OWNER });
  i.compression.forEach((psi, n) => measure(date, { check: `compression-${n + 1}`, value: `${psi} psi`, instrument: 'compression-gauges', range: '100 psi' }));
  measure(date, { check: 'starter-contactor-drop', value: i.contactor, instrument: 'bench-meter', range: '6 V' });
  measure(date, { check: 'ground-strap-drop', value: i.strap, instrument: 'bench-meter', range: '6 V' });
  measure(date, { check: 'engine-bonding', value: i.bond, instrument: 'milliohm-meter', range: '200 mohm', leads: 'four-wire' });
  measure(date, { check: 'left-magneto-timing', value: i.timing[0], instrument: 'timing-light', range: 'degree plate' });
  measure(date, { check: 'right-magneto-timing', value: i.timing[1], instrument: 'timing-light', range: 'degree plate' });
  taskDone(date, { limit: 'magneto-timing', at: engineAt(date), text: 'both magnetos checked against the degree plate' });
  taskDone(date, { limit: 'exhaust-look', at: engineAt(date), text: 'heat muff off, welds looked at with a mirror: no crack', document: 'engine maker\'s manual (invented), rev. 4' });
  quickJob(date, { what: 'filter', text: 'air filter washed and oiled', limits: ['air-filter-clean'], at: engineAt(date), by: OWNER });
  quickJob(date, { what: 'plugs', text: 'all eight cleaned, gapped to 0.018 in, rotated', limits: ['plugs-clean'], at: engineAt(date), by: OWNER });
  quickJob(date, { what: 'lubrication', text: 'control cables and heat-box shaft oiled', limits: ['control-cables-lubricate'], at: engineAt(date), by: OWNER });
  taskDone(date, { limit: 'condition-inspection', at: engineAt(date), text: 'whole aircraft inspected after the list in the operating limitations' });
  on(date, 'sign-entry', {
    aircraft: 'pebblewing', id: `inspection-${date.slice(0, 4)}`, about: 'condition-inspection', purpose: 'condition-inspection',
    text: `Condition inspection of Q-PEB made on ${date} at ${engineAt(date)[0].hours} engine time after the list in the operating limitations (invented). Readings are in the record under this date.`,
    name: SECOND, signer: 'repairman', certificate: REPAIRMAN,
  }, { author: SECOND });
  if (date !== '2026-02-14') q('move-cowl')(date, { closed: true, by: OWNER });
}

// Read in flight and on the ground now and then: before and after every winter, and in summer.
const runs = [
  ['2023-12-09', 74, 188, '4.1 psi', 90, 100, 2260, '14.21 V'],
  ['2024-07-06', 71, 214, '4.0 psi', 90, 100, 2250, '14.18 V'],
  ['2025-03-08', 73, 191, '4.1 psi', 100, 100, 2260, '14.20 V'],
  ['2025-07-19', 70, 216, '3.9 psi', 100, 110, 2250, '14.16 V'],
  ['2026-03-07', 72, 190, '4.0 psi', 100, 100, 2260, '14.15 V'],
  ['2026-07-18', 69, 219, '3.8 psi', 110, 110, 2240, '14.11 V'],
  ['2026-11-14', 71, 186, '3.8 psi', 120, 110, 2250, '14.09 V'],
];
for (const [date, pressure, temperature, fuel, left, right, speed, volts] of runs) {
  const panel = (check, value, range) => measure(date, { check, value, instrument: 'panel-gauges', range });
  panel('oil-pressure', `${pressure} psi`, 'oil pressure');
  panel('oil-temperature', `${temperature} degF`, 'oil temperature');
  panel('fuel-pressure', fuel, 'fuel pressure');
  panel('left-magneto-drop', `${left} rpm`, 'tachometer');
  panel('right-magneto-drop', `${right} rpm`, 'tachometer');
  panel('static-speed', `${speed} rpm`, 'tachometer');
  measure(date, { check: 'charging-voltage', value: volts, instrument: 'bench-meter', range: '60 V' });
}

// Volts at the battery while the engine is cranked: the old battery fades, the new one steps up.
const cranking = [
  ['2023-12-09', '9.85 V'], ['2024-02-17', '9.79 V'], ['2024-04-06', '9.81 V'], ['2024-07-13', '9.73 V'], ['2024-10-05', '9.68 V'],
  ['2025-02-08', '9.61 V'], ['2025-05-17', '9.57 V'], ['2025-08-30', '9.49 V'], ['2025-11-08', '9.38 V'],
  ['2025-11-22', '10.41 V'], ['2025-12-13', '10.36 V'], ['2026-02-14', '10.39 V'], ['2026-03-14', '10.42 V'], ['2026-06-20', '10.38 V'], ['2026-09-26', '10.40 V'], ['2026-11-14', '10.37 V'],
];
for (const [date, value] of cranking) measure(date, { check: 'cranking-voltage', value, instrument: 'bench-meter', range: '60 V' });

// The lower oil hose as it hangs there now, drawn from what was measured in the autumn.
q('draw-hose')('2026-11-15', {
  id: 'oil-hose-lower', position: 'oil-hose-lower', note: 'invented; drawn to see what its renewal must keep to',
  sheet: {
    title: 'lower oil hose, as it hangs now', family: 'MIL-H-8794', size: '-8', near_at: 'engine, oil outlet', far_at: 'oil cooler, lower port',
    near_end: { form: 'straight', seat: { x: '0 in', y: '0 in', z: '0 in' }, leaves: { x: 1 }, rigid: '1.5 in' },
    far_end: { form: 'straight', seat: { x: '12 in', y: '-11 in', z: '-3 in' }, leaves: { y: 1 }, rigid: '1.5 in' },
    outside_diameter: '0.77 in', least_radius: '4.63 in', radius_source: 'AC 43.13-1B table 9-3', overall: '20.5 in', working_pressure: '90 psi',
    drawn_by: OWNER, drawn_on: '2026-11-15',
  },
});

// Oil, strainer and propeller bolts: quick jobs between the flights.
const oilChanges = ['2023-12-16', '2024-04-06', '2024-07-13', '2024-10-05', '2025-02-08', '2025-05-17', '2025-08-30', '2025-12-13', '2026-03-14', '2026-06-20', '2026-09-26'];
oilChanges.forEach((date, k) => {
  quickJob(date, {
    what: 'oil-change', quantity: '6 qt', parts: 'one oil filter, one crush washer',
    text: k === 6 ? 'oil drained warm, filter renewed, element cut open: two flakes of carbon, no metal' : 'oil drained warm, filter renewed, element cut open: clean',
    limits: ['oil-change'], at: engineAt(date), by: OWNER,
  });
  if (k % 2 === 0) quickJob(date, { what: 'filter', text: 'fuel strainer drained, screen washed, bowl wired again; no water', limits: ['fuel-strainer-clean'], at: engineAt(date), by: OWNER });
  if (k % 2 === 0) taskDone(date, { limit: 'propeller-bolt-torque', at: engineAt(date), text: '190 in-lb each, crosswise; wired', document: 'propeller maker\'s sheet (invented), rev. D' });
});

// The battery is renewed: one part out, another in.
on('2025-11-15', 'register-part', {
  id: 'battery-03', type: 'battery', description: '12 V, 24 Ah, sealed', serial: 'B-1125', papers: 'delivery note (invented)', mass: '17.2 lb',
});
q('remove-part')('2025-11-15', { part: 'battery-02', reason: 'cranked slowly, five and a half years old', at: engineAt('2025-11-15') });
q('install-part')('2025-11-15', { part: 'battery-03', position: 'battery', at: engineAt('2025-11-15') });
quickJob('2025-11-15', { what: 'battery', text: 'battery renewed, terminals torqued to 60 in-lb, charging voltage 14.1 V', parts: 'off B-0420, on B-1125', at: engineAt('2025-11-15'), by: OWNER });

// Two defects: one found and cured, one that is still watched.
q('note-defect')('2025-05-03', { id: 'rough-right-magneto', text: 'rough on the right magneto at the run-up, 200 rpm drop', position: 'plugs-bottom', decision: 'ground', reason: 'not before it is found' });
measure('2025-05-03', { check: 'right-magneto-drop', value: '200 rpm', instrument: 'panel-gauges', range: 'tachometer' });
quickJob('2025-05-04', { what: 'plugs', text: 'lower plug of cylinder 2 fouled with lead; cleaned, gap set', at: engineAt('2025-05-04'), by: OWNER });
measure('2025-05-04', { check: 'right-magneto-drop', value: '110 rpm', instrument: 'panel-gauges', range: 'tachometer' });
q('close-defect')('2025-05-04', { defect: 'rough-right-magneto', how: 'fouled lower plug of cylinder 2 cleaned; 110 rpm drop, smooth, after a ground run' });
q('note-defect')('2026-10-10', { id: 'oil-film-cylinder-4', text: 'oil film below the left rear cylinder after flight', position: 'cylinder-4' });
q('decide-defect')('2026-10-11', { defect: 'oil-film-cylinder-4', decision: 'fly', reason: 'seeps at a pushrod tube, wiped dry, less than a teaspoon in three flights; looked at after every flight', until: '2026-12-31' });

// Last winter's stage, from the plan to the second signature.
const stage = 'winter-2026-carburettor-hose';
const hoseJoints = ['fuel-hose-carburettor-inlet', 'fuel-hose-carburettor-outlet'];
const allJoints = [...hoseJoints, 'exhaust-right-flanges'];
planChange('2026-01-24', {
  id: 'carburettor-hose-2026', title: 'Renew the fuel hose from the engine pump to the carburettor', position: 'fuel-hose-carburettor', grade: 'renewed',
  new_part: 'hose assembly, elastomer, -6, 11 in, fire sleeve', document: 'hose maker\'s sheet (invented), rev. B; routing after the old hose',
  joints: hoseJoints, mass_out: '0.6 lb', mass_in: '0.6 lb', arm: '-28 in',
});
planChange('2026-01-24', {
  id: 'exhaust-gaskets-2026', title: 'Renew the gaskets of the right exhaust', position: 'exhaust-right', grade: 'opened-and-refitted',
  new_part: 'two gaskets', document: 'engine maker\'s manual (invented), rev. 4, table 3', joints: ['exhaust-right-flanges'],
});
on('2026-01-24', 'plan-stage', {
  aircraft: 'pebblewing', id: stage, title: 'Winter 2026: carburettor hose and right exhaust gaskets', changes: ['carburettor-hose-2026', 'exhaust-gaskets-2026'],
  abort_values: [{ what: 'fuel pressure', limit: 'below 2 psi' }, { what: 'smell of fuel', limit: 'any' }],
});
workJoints('2026-02-14', { joints: allJoints, state: 'open', by: OWNER, stage });
q('count-bung')('2026-02-14', { id: 'red-cap-1', where: 'carburettor inlet', fitted: true });
q('count-bung')('2026-02-14', { id: 'red-cap-2', where: 'engine pump outlet', fitted: true });
on('2026-02-15', 'register-part', {
  id: 'hose-0533', type: 'hose assembly', description: 'elastomer, -6, 11 in, fire sleeve', batch: '2025-4Q', cured: '2025-10-01', assembled: '2026-01-30',
  papers: 'hose shop\'s tag 0533 (invented), proof test noted on it', mass: '0.6 lb',
});
q('remove-part')('2026-02-15', { part: 'hose-0398', reason: 'five years from cure', at: engineAt('2026-02-15'), change: 'carburettor-hose-2026' });
q('install-part')('2026-02-15', { part: 'hose-0533', position: 'fuel-hose-carburettor', at: engineAt('2026-02-15'), change: 'carburettor-hose-2026' });
q('count-bung')('2026-02-15', { id: 'red-cap-1', fitted: false });
q('count-bung')('2026-02-15', { id: 'red-cap-2', fitted: false });
changeDone('2026-02-15', {
  change: 'carburettor-hose-2026', text: 'hose fitted along the old way, no twist, clear of the exhaust by 3 in', by: OWNER,
  proof: 'hose shop\'s proof test on the tag; ball passed through; flushed', parts_off: 'hose-0398', parts_on: 'hose-0533',
});
changeDone('2026-02-15', { change: 'exhaust-gaskets-2026', text: 'faces cleaned, two new gaskets, flanges drawn down evenly', by: OWNER, proof: 'smooth faces, no step' });
for (const joint of hoseJoints) workJoint('2026-02-15', { joint, state: 'torqued', torque: '120 in-lb', instrument: 'torque-wrench', by: OWNER, stage });
workJoint('2026-02-15', { joint: 'exhaust-right-flanges', state: 'torqued', torque: '110 in-lb', instrument: 'torque-wrench', by: OWNER, stage });
workJoint('2026-02-15', { joint: 'exhaust-right-flanges', state: 'locked', by: OWNER, stage });
workJoints('2026-02-15', { joints: allJoints, state: 'marked', by: OWNER, stage });
on('2026-02-15', 'attach', {
  aircraft: 'pebblewing', name: 'stripe.png', media_type: 'image/png', about: stage,
  caption: 'Witness stripe across the hose nut at the carburettor (drawn, invented)',
}, { attach: 'stripe.png' });
workJoints('2026-02-16', { joints: allJoints, state: 'seen', by: SECOND, stage }, { author: SECOND });
on('2026-02-16', 'revise-mass', {
  aircraft: 'pebblewing', stage, empty_mass: '1087 lb', empty_arm: '11.2 in', forward_limit: '9.0 in', aft_limit: '18.5 in', greatest_mass: '1750 lb',
  items: [
    { what: 'carburettor hose, old', added: false, mass: '0.6 lb', arm: '-28 in' },
    { what: 'carburettor hose, new', added: true, mass: '0.6 lb', arm: '-28 in' },
  ],
  document: 'calculation of 2026-02-16 (invented): unchanged', note: 'same mass at the same place',
});
stageStep('2026-02-17', { stage, step: 'leak-run-static', result: 'satisfactory', text: 'boost pump ten minutes, tissue around both nuts dry', by: OWNER });
stageStep('2026-02-17', { stage, step: 'leak-run-engine', result: 'satisfactory', text: 'five minutes at 1000 rpm uncowled, dry; no soot at the flanges', by: OWNER });
stageStep('2026-02-17', {
  stage, step: 'ground-run', result: 'satisfactory', text: 'smooth on both and on each magneto', by: OWNER,
  ambient_temperature: '37 degF', ambient_pressure: '30.12 inHg',
  readings: [{ what: 'fuel pressure', value: '4.1 psi' }, { what: 'oil pressure', value: '76 psi' }, { what: 'static speed', value: '2270 rpm' }],
});
measure('2026-02-17', { check: 'fuel-pressure', value: '4.1 psi', instrument: 'panel-gauges', range: 'fuel pressure', stage });
q('move-cowl')('2026-02-17', { closed: true, by: OWNER });
on('2026-02-17', 'open-stage', { aircraft: 'pebblewing', stage, name: OWNER, signer: 'owner' });
stageStep(CHECK_FLIGHT.date, {
  stage, step: 'check-flight', result: 'satisfactory', text: 'over the field, full power and idle, no smell of fuel', by: OWNER,
  ambient_temperature: '39 degF', ambient_pressure: '30.02 inHg', flight_time: '40 min', at: shown.get(CHECK_FLIGHT.date),
});
stageStep('2026-02-22', { stage, step: 'second-look', result: 'satisfactory', text: 'cowl off: stripes whole, dry; flanges without soot', by: OWNER });
on('2026-02-22', 'close-stage', { aircraft: 'pebblewing', stage, name: OWNER, signer: 'owner' });

// The winter that has just begun: two changes are planned, the rest is still to be thought about.
planChange('2026-11-23', {
  id: 'isolators-2027', title: 'Renew the two upper engine mount isolators', position: 'mount-isolator-upper-left', grade: 'renewed', kind: 'mount-isolators',
  new_part: 'two isolators, elastomer', document: 'engine maker\'s manual (invented), rev. 4', joints: ['mount-upper-left-bolt', 'mount-upper-right-bolt'],
  note: 'First of all: the engine settles on them, then controls are rigged and hoses measured.',
});
planChange('2026-11-23', {
  id: 'oil-hoses-2027', title: 'Renew both oil-cooler hoses', position: 'oil-hose-upper', grade: 'renewed', new_part: 'two hose assemblies, PTFE, -8, fire sleeve',
  document: 'hose maker\'s sheet (invented), rev. B', joints: ['oil-hose-upper-engine', 'oil-hose-upper-cooler', 'oil-hose-lower-engine', 'oil-hose-lower-cooler'],
  after: ['isolators-2027'],
});

// Thornback, taken in this autumn.
const thornback = (date, act, input) => on(date, act, { aircraft: 'thornback', ...input });
const thbFlights = [['2026-10-03', 2141], ['2026-10-11', 2158], ['2026-10-24', 2170], ['2026-11-07', 2189], ['2026-11-15', 2201]];
for (const [date, tenths] of thbFlights) thornback(date, 'read-counter', { at: [{ counter: 'engine', hours: hours(tenths) }] });
thornback('2026-10-10', 'quick-job', { what: 'oil-change', text: 'oil and filter renewed, element clean', quantity: '8 qt', limits: ['oil-change'], at: [{ counter: 'engine', hours: hours(2141) }] });
for (const module of [1, 2]) {
  [1, 2, 3].forEach((n) => thornback('2026-10-10', 'measure', {
    check: `coil-${module}-${n}`, value: `${10 + module}.${n}0 kohm`, instrument: 'bench-meter', range: '60 kohm', leads: 'nulled',
  }));
}

// ---- in order, with ids ----------------------------------------------------------------------

const first = { act: 'import-sheet', happened: '2023-11-18', author: OWNER, sheet: 'pebblewing.toml' };
on('2026-09-26', 'import-sheet', undefined, { sheet: 'thornback.toml' });
const lines = [first];
for (const day of [...byDay.keys()].sort()) {
  const acts = byDay.get(day);
  // Meters before what is read with them, flights before the work of the evening.
  const rank = (a) => (a.sheet ? 0 : a.act === 'register-instrument' ? 1 : a.act === 'read-counter' ? 2 : 3);
  lines.push(...acts.map((a, k) => [a, k]).sort((a, b) => rank(a[0]) - rank(b[0]) || a[1] - b[1]).map(([a]) => a));
  if (day === '2025-02-15') {
    lines.push({
      act: 'correct', happened: '2025-02-16', author: OWNER, corrects: mistyped.line,
      input: { body: JSON.stringify(mistyped.right = { aircraft: 'pebblewing', ...mistyped.right }), reason: 'mistyped: the display showed 5.61, not 56.1' },
    });
  }
}
lines.forEach((line, k) => { line.id = `demo-${String(k + 1).padStart(4, '0')}`; });
const ordered = lines.map(({ act, id, happened, author, sheet, attach, corrects, input }) => ({
  act, id, happened, author, ...(sheet && { sheet }), ...(attach && { attach }),
  ...(input && { input: corrects ? { event: corrects.id, ...input } : input }),
}));
const comment = 'Everything in this file is invented: aircraft, people, parts, papers, readings. Written by demo/make_history.mjs; change that, not this.';
const history = [{ comment }, ...ordered].map((line) => JSON.stringify(line)).join('\n') + '\n';

// ---- a drawn witness stripe ------------------------------------------------------------------

/** A PNG without compression, so that the bytes do not depend on a library's version. */
function png(width, height, colourAt) {
  const palette = [[0xf4, 0xf1, 0xea], [0x9a, 0x9f, 0xa6], [0x6d, 0x73, 0x7b], [0xc8, 0x3a, 0x2b]];
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; ++y) for (let x = 0; x < width; ++x) rows[y * (width + 1) + 1 + x] = colourAt(x, y);
  const crcOf = (bytes) => {
    let crc = ~0;
    for (const b of bytes) {
      crc ^= b;
      for (let k = 0; k < 8; ++k) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
    }
    return ~crc >>> 0;
  };
  const u32 = (n) => Buffer.from([n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255]);
  const chunk = (name, data) => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
    return Buffer.concat([u32(data.length), body, u32(crcOf(body))]);
  };
  const blocks = [Buffer.from([0x78, 0x01])];
  for (let at = 0; at < rows.length; at += 65535) {
    const part = rows.subarray(at, at + 65535);
    const last = at + 65535 >= rows.length ? 1 : 0;
    blocks.push(Buffer.from([last, part.length & 255, part.length >> 8, ~part.length & 255, (~part.length >> 8) & 255]), part);
  }
  let a = 1, b = 0;
  for (const byte of rows) { a = (a + byte) % 65521; b = (b + a) % 65521; }
  blocks.push(u32(((b << 16) | a) >>> 0));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', Buffer.concat([u32(width), u32(height), Buffer.from([8, 3, 0, 0, 0])])),
    chunk('tEXt', Buffer.from('Comment\0Drawn and invented: demo of Witnessmark', 'latin1')),
    chunk('PLTE', Buffer.from(palette.flat())),
    chunk('IDAT', Buffer.concat(blocks)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
// A hexagon nut on a fitting, and the stripe across both.
const stripe = png(160, 120, (x, y) => {
  const dx = Math.abs(x - 80), dy = Math.abs(y - 60);
  const onStripe = Math.abs(x - 96 + (y - 60) * 0.25) < 5 && y > 14 && y < 106;
  const nut = dx < 44 && dy < 38 && dx * 38 + dy * 22 < 44 * 38;
  const fitting = dy < 22 && dx < 76;
  if (onStripe && (nut || fitting || y > 40)) return 3;
  if (nut) return 1;
  return fitting ? 2 : 0;
});

// ---- write or compare ------------------------------------------------------------------------

const files = [['history.jsonl', Buffer.from(history, 'utf8')], ['stripe.png', stripe]];
if (process.argv.includes('--check')) {
  for (const [name, wanted] of files) {
    if (!readFileSync(join(folder, name)).equals(wanted)) {
      console.error(`demo/${name} is not what demo/make_history.mjs writes: run it again`);
      process.exitCode = 1;
    }
  }
} else {
  for (const [name, content] of files) writeFileSync(join(folder, name), content);
  console.log(`${ordered.length} acts`);
}
