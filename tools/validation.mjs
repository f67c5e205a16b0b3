// node tools/validation.mjs ROWS_DIR OUT.md
//
// Makes docs/validation.md from the rows that the reference tests wrote into
// $WM_VALIDATION_DIR (tests/support/reference_case.cpp). The same rows always give the
// same file: sorted, no time, doubles dropped (a test program may have run twice).
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const columns = ['id', 'source', 'expected', 'got', 'difference', 'tolerance', 'why'];
const heads = ['Case', 'Source', 'Expected', 'Got', 'Difference', 'Tolerance', 'Why this tolerance'];

export function readRows(dir) {
  const rows = new Map();
  for (const name of readdirSync(dir).filter((n) => n.endsWith('.jsonl')).sort()) {
    readFileSync(join(dir, name), 'utf8').split('\n').forEach((line, index) => {
      if (line.trim() === '') return;
      let row;
      try {
        row = JSON.parse(line);
      } catch (error) {
        throw new Error(`${name}:${index + 1}: no JSON (${error.message})`);
      }
      for (const key of ['calculation', ...columns]) {
        if (typeof row[key] !== 'string') throw new Error(`${name}:${index + 1}: "${key}" is missing`);
      }
      rows.set(JSON.stringify(row, Object.keys(row).sort()), row);
    });
  }
  return [...rows.values()];
}

// Numbers inside an id count as numbers: D2 comes before D10.
const collate = (a, b) => {
  const parts = (text) => text.match(/\d+|\D+/g) ?? [];
  const [left, right] = [parts(a), parts(b)];
  for (let i = 0; i < Math.min(left.length, right.length); i += 1) {
    if (left[i] === right[i]) continue;
    const [x, y] = [Number(left[i]), Number(right[i])];
    if (Number.isInteger(x) && Number.isInteger(y) && x !== y) return x - y;
    return left[i] < right[i] ? -1 : 1;
  }
  return left.length - right.length;
};

const cell = (text) => text.replace(/\s+/g, ' ').replace(/\|/g, '\\|').trim() || ' ';

export function page(rows) {
  const groups = new Map();
  for (const row of rows) groups.set(row.calculation, [...(groups.get(row.calculation) ?? []), row]);
  const lines = [
    '<!-- Made by tools/validation.mjs from the reference tests; ./check compares it. -->',
    '# Checks against sources outside the project',
    '',
    'Each row is a reference test: what a published standard, a handbook, a worked example or a',
    'general-purpose library gives, and what Witnessmark gives. A row that disagrees beyond its',
    'tolerance fails `./check`. A check here shows that the sum is done as the source does it; it',
    'does not show that the sum is the right one for your aircraft. The maker\'s manual, the local',
    'rules and a licensed person decide that.',
    '',
    `${rows.length} cases in ${groups.size} groups.`,
  ];
  for (const name of [...groups.keys()].sort(collate)) {
    lines.push('', `## ${name}`, '', `| ${heads.join(' | ')} |`, `|${heads.map(() => ' --- |').join('')}`);
    const sorted = groups.get(name).sort((a, b) =>
      collate(a.id, b.id) || collate(JSON.stringify(a), JSON.stringify(b)));
    for (const row of sorted) {
      const failed = row.passed === false ? ' **disagrees**' : '';
      lines.push(`| ${columns.map((key) => cell(row[key]) + (key === 'got' ? failed : '')).join(' | ')} |`);
    }
  }
  return `${lines.join('\n')}\n`;
}

if (process.argv[1]?.endsWith('validation.mjs')) {
  const [dir, out] = process.argv.slice(2);
  if (!dir || !out) {
    console.error('usage: node tools/validation.mjs ROWS_DIR OUT.md');
    process.exit(2);
  }
  try {
    const rows = readRows(dir);
    writeFileSync(out, page(rows));
    console.log(`${rows.length} reference cases`);
  } catch (error) {
    console.error(`validation: ${error.message}`);
    process.exit(1);
  }
}
