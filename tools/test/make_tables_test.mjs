// node tools/test/make_tables_test.mjs MAKE_TABLES
// The generator of reference tables accepts a good table and names what is bad in each other.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync, readFileSync, rmSync, statSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const program = process.argv[2];
if (!program) {
  console.error('usage: node tools/test/make_tables_test.mjs MAKE_TABLES');
  process.exit(2);
}
const dir = mkdtempSync(join(tmpdir(), 'wm-tables-'));
process.on('exit', () => rmSync(dir, { recursive: true, force: true }));
let passed = 0;
let failed = 0;
const check = (what, good, seen) => {
  if (good) passed += 1;
  else {
    failed += 1;
    console.log(`make_tables: ${what}; saw: ${seen}`);
  }
};

const good = () => ({
  table: 'sample', title: 'A sample "quoted"',
  source: { document: 'Invented', edition: 'first', place: 'page 1' },
  provenance: 'read', read: 'typed for this test', between_rows: 'refuse', outside: 'refuse',
  columns: [{ key: 'size', meaning: 'Size' }, { key: 'drop', meaning: 'Drop', unit: 'V' }],
  rows: [['No. 6', '0.50'], ['No. 8', '.366'], ['No. 10', '1 1/2'], ['No. 12', ''], ['No. 12', '-1.2e-3']],
});
const run = (table, name = 'sample') => {
  const file = join(dir, `${name}.json`);
  writeFileSync(file, typeof table === 'string' ? table : JSON.stringify(table));
  const got = spawnSync(program, ['hose', join(dir, 'out'), file], { encoding: 'utf8' });
  return { status: got.status, said: got.stderr };
};

{
  const table = good();
  table.row_notes = { 'No. 8': 'read twice' };
  table.row_provenance = { 'row 5': 'memory' };
  table.errata = ['page 1: a misprint'];
  const got = run(table);
  const path = join(dir, 'out/tables/hose/sample.cpp');
  check('a good table is accepted', got.status === 0, got.said);
  const text = got.status === 0 ? readFileSync(path, 'utf8') : '';
  check('digits stay as printed', text.includes('"0.50"') && text.includes('".366"'), text);
  check('a row carries its own provenance', /"read",\s+"memory",/.test(text), text);
  check('quotes in a text are escaped', text.includes('A sample \\"quoted\\"'), text);
  utimesSync(path, 1000, 1000);
  run(table);
  check('the same table leaves its file alone', statSync(path).mtimeMs === 1000000, 'rewritten');
}

// What is changed, and what the message must say.
const bad = [
  ['a short row', (t) => t.rows[1].pop(), 'row 2: has 1 cells; expected a list of 2'],
  ['a number without quotes', (t) => { t.rows[0][1] = 0.5; }, 'row 1, column "drop": 0.5 has no quotes'],
  ['a cell that is no figure', (t) => { t.rows[2][1] = '1,5'; }, 'row 3, column "drop": "1,5" is no figure'],
  ['a figure with a unit', (t) => { t.rows[2][1] = '1.5 V'; }, '"1.5 V" is no figure'],
  ['a fraction over nought', (t) => { t.rows[2][1] = '1/0'; }, '"1/0" is no figure'],
  ['a row twice', (t) => t.rows.push(['No. 6', '0.50']), 'row 6: is the same as an earlier row'],
  ['an unknown provenance', (t) => { t.provenance = 'rumour'; }, 'expected one of read, secondary'],
  ['no source', (t) => { delete t.source; }, '"source" is missing'],
  ['no edition', (t) => { delete t.source.edition; }, 'source: "edition" is missing'],
  ['a key that is not known', (t) => { t.colour = 'red'; }, '"colour" is not known'],
  ['another name than the file', (t) => { t.table = 'other'; }, 'expected the name of the file, "sample"'],
  ['a column twice', (t) => { t.columns[1].key = 'size'; }, 'key "size" is there twice'],
  ['a note for two rows', (t) => { t.row_notes = { 'No. 12': 'x' }; }, '"No. 12" names 2 rows'],
  ['a note for no row', (t) => { t.row_notes = { 'No. 99': 'x' }; }, '"No. 99" names 0 rows'],
  ['a rule between rows', (t) => { t.between_rows = 'guess'; }, 'expected one of refuse, interpolate'],
  ['a rule outside', (t) => { t.outside = 'extrapolate'; }, 'expected refuse'],
  ['no rows', (t) => { t.rows = []; }, '"rows" is missing or empty'],
  ['a line break in the title', (t) => { t.title = 'a\nb'; }, 'has a line break'],
];
for (const [what, change, said] of bad) {
  const table = good();
  change(table);
  const got = run(table);
  check(`${what} is refused`, got.status === 1 && got.said.includes(said), `${got.status} ${got.said}`);
  check(`${what}: the file is named`, got.said.includes('sample.json: error: '), got.said);
}
{
  const got = run('{"table": ');
  check('a broken file is refused', got.status === 1 && got.said.includes('is no JSON'), got.said);
  const two = good();
  two.provenance = 'x';
  two.rows[0][1] = 'y';
  const said = run(two).said;
  check('every error is told at once', said.split('\n').filter(Boolean).length === 2, said);
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
