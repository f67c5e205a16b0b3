// node tools/test/tools_test.mjs   the tools that ./check trusts, tried on samples.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rowsOf, table } from '../bench-table.mjs';
import { count } from '../count-output.mjs';
import { page, readRows } from '../validation.mjs';

const tools = join(dirname(fileURLToPath(import.meta.url)), '..');
const dir = mkdtempSync(join(tmpdir(), 'wm-tools-'));
process.on('exit', () => rmSync(dir, { recursive: true, force: true }));
let passed = 0;
let failed = 0;
const test = (name, body) => {
  try {
    body();
    passed += 1;
  } catch (error) {
    failed += 1;
    console.log(`${name}: ${error.message}`);
  }
};

test('the last count of a program is taken', () => {
  assert.deepEqual(count('1 passed, 0 failed\n12 passed, 3 failed, 2 skipped\n', 1),
    { passed: 12, failed: 3, skipped: 2 });
});
test('a program that ended badly is not believed', () => {
  assert.deepEqual(count('12 passed, 0 failed\n', 139), { passed: 12, failed: 1, skipped: 0 });
});
test('the test runner of Node is understood', () => {
  assert.deepEqual(count('# tests 5\n# pass 4\n# fail 1\n# skipped 0\n', 1),
    { passed: 4, failed: 1, skipped: 0 });
});
test('a program without a count is one test', () => {
  assert.deepEqual(count('all is well\n', 0), { passed: 1, failed: 0, skipped: 0 });
  assert.deepEqual(count('', 1), { passed: 0, failed: 1, skipped: 0 });
});

const gtest = (cases) => JSON.stringify({
  tests: cases.length, failures: cases.filter((c) => c === 'bad').length, disabled: 0, errors: 0,
  testsuites: [{ name: 'S', testsuite: cases.map((c, i) => ({ name: `t${i}`, result: c === 'skip' ? 'SKIPPED' : 'COMPLETED' })) }],
});
const ctest = (statuses, results) => {
  const at = mkdtempSync(join(dir, 'c-'));
  mkdirSync(join(at, 'g'));
  writeFileSync(join(at, 'l.json'), JSON.stringify({
    tests: Object.keys(statuses).map((name) => ({ name, command: [`/x/wm_${name}_test`] })) }));
  writeFileSync(join(at, 'j.xml'), Object.entries(statuses).map(([name, status]) =>
    `<testcase name="${name}" classname="${name}" time="0.1" status="${status}">`).join('\n'));
  for (const [name, text] of Object.entries(results)) writeFileSync(join(at, 'g', `wm_${name}_test.json`), text);
  return execFileSync('node', [join(tools, 'count-ctest.mjs'), join(at, 'l.json'), join(at, 'j.xml'), join(at, 'g')],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
};
test('cases inside test programs are counted', () => {
  assert.equal(ctest({ a: 'run', b: 'fail' }, { a: gtest(['ok', 'ok', 'skip']), b: gtest(['ok', 'bad']) }), '3 1 1');
});
test('a program that crashed counts as failed', () => {
  assert.equal(ctest({ a: 'run', b: 'fail' }, { a: gtest(['ok']) }), '1 1 0');
});
test('a leak at the end is a failure although every case passed', () => {
  assert.equal(ctest({ a: 'fail' }, { a: gtest(['ok', 'ok']) }), '2 1 0');
});
test('a program that was not built is a failure', () => {
  assert.equal(ctest({ a: 'notrun' }, {}), '0 1 0');
});

const row = (calculation, id, more = {}) => JSON.stringify({
  calculation, id, source: 'Invented, page 1', expected: '1', got: '1', difference: '0', tolerance: '0.5',
  why: 'a|b', passed: true, ...more });
test('the validation page is sorted, without doubles, and the same each time', () => {
  const a = join(dir, 'rows');
  mkdirSync(a);
  writeFileSync(join(a, 'rows.x.jsonl'), [row('x', 'D10'), row('x', 'D2'), row('x', 'D2'), row('a', 'T1')].join('\n'));
  const text = page(readRows(a));
  assert.ok(text.indexOf('## a') < text.indexOf('## x'));
  assert.ok(text.indexOf('| D2 ') < text.indexOf('| D10 '));
  assert.equal(text.match(/\| D2 /g).length, 1);
  assert.ok(text.includes('a\\|b'));
  assert.ok(text.includes('3 cases in 2 groups'));
  assert.equal(text, page(readRows(a)));
});
test('a row that disagrees is marked', () => {
  assert.ok(page([JSON.parse(row('x', 'D1', { passed: false }))]).includes('**disagrees**'));
});
test('a broken row is named', () => {
  const a = join(dir, 'broken');
  mkdirSync(a);
  writeFileSync(join(a, 'r.jsonl'), `${row('x', 'D1')}\n{"calculation":`);
  assert.throws(() => readRows(a), /r\.jsonl:2/);
});

test('both ways in which a benchmark prints are read', () => {
  const own = rowsOf('fold', 'warming up\n{"act":"fold","value":3,"unit":"s","peer":"p","peer_value":2}\n');
  assert.equal(own[0].ratio, 1.5);
  const library = rowsOf('calc', JSON.stringify({ context: {}, benchmarks: [
    { name: 'a_mean', run_name: 'a', run_type: 'aggregate', aggregate_name: 'mean', real_time: 9, time_unit: 'ns' },
    { name: 'a_median', run_name: 'a', run_type: 'aggregate', aggregate_name: 'median', real_time: 7, time_unit: 'ns' }] }));
  assert.deepEqual(library, [{ bench: 'calc', act: 'a', value: 7, unit: 'ns' }]);
  assert.match(table([...own, ...library]), /^benchmark +act +median +unit +peer +peer median +ratio\nfold +fold +3 +s +p +2 +1\.5\ncalc +a +7 +ns$/);
});

test('a list of packages with a missing program names it and why', () => {
  const at = join(dir, 'install');
  mkdirSync(join(at, 'tools/packages'), { recursive: true });
  mkdirSync(join(at, 'bin'));
  for (const file of ['lib.sh', 'install.sh']) {
    execFileSync('cp', [join(tools, file), join(at, 'tools')]);
  }
  writeFileSync(join(at, 'tools/packages/sample'), 'no-such-package command:no-such-command # to try this\n');
  writeFileSync(join(at, 'tools/packages/there'), '# a note\nbash command:bash # a shell\n');
  // A path without apt-get, so that nothing can be installed by this test.
  for (const program of ['bash', 'dirname', 'cut', 'tr', 'sort', 'id', 'ls', 'sed', 'cat', 'uname']) {
    execFileSync('ln', ['-s', execFileSync('which', [program], { encoding: 'utf8' }).trim(), join(at, 'bin')]);
  }
  const run = (group) => spawnSync('/bin/bash', ['tools/install.sh', group],
    { cwd: at, env: { PATH: join(at, 'bin') }, encoding: 'utf8' });
  const got = run('sample');
  assert.equal(got.status, 1);
  assert.match(got.stdout, /no-such-package +to try this/);
  assert.match(got.stderr, /There is no apt-get/);
  assert.equal(run('there').status, 0);
  assert.equal(run('there').stdout, '');
  assert.match(run('nothing').stderr, /no list/);
});

const startRefuses = (words, said) => test(`./start ${words.join(' ')} is refused`, () => {
  const got = spawnSync('bash', [join(tools, '../start'), ...words], { encoding: 'utf8' });
  assert.equal(got.status, 1);
  assert.match(got.stderr, said);
});
startRefuses(['--port', '0'], /expected 1 to 65535/);
startRefuses(['--port', '70000'], /expected 1 to 65535/);
startRefuses(['--port', '80a'], /not a port/);
startRefuses(['--port'], /needs a number/);
startRefuses(['--colour'], /not an option/);
startRefuses(['no-such.binder'], /no file/);

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
