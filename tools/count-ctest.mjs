// node tools/count-ctest.mjs CTEST_JSON JUNIT_XML GTEST_DIR   ->   "passed failed skipped"
//
// Counts the cases inside each test program that ctest ran: CTEST_JSON is what
// `ctest --show-only=json-v1` says, JUNIT_XML what --output-junit wrote, and GTEST_DIR
// holds the result files of the GoogleTest programs. A program without such a file, or
// one that failed although all its cases passed (a leak found at the end), counts as one.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';

const [listFile, junitFile, gtestDir] = process.argv.slice(2);
const list = JSON.parse(readFileSync(listFile, 'utf8')).tests ?? [];
const junit = existsSync(junitFile) ? readFileSync(junitFile, 'utf8') : '';
const status = new Map();
for (const [, attributes] of junit.matchAll(/<testcase\s([^>]*)>/g)) {
  const of = (key) => new RegExp(`\\b${key}="([^"]*)"`).exec(attributes)?.[1];
  status.set(of('name'), of('status'));
}

let passed = 0;
let failed = 0;
let skipped = 0;
const files = existsSync(gtestDir) ? readdirSync(gtestDir) : [];
for (const test of list) {
  const program = basename(test.command?.[0] ?? '');
  const how = status.get(test.name);
  // A program that ctest runs under several names leaves name.json, name_1.json, ...
  const own = list.filter((t) => basename(t.command?.[0] ?? '') === program).length === 1
    ? files.find((f) => f === `${program}.json`) : undefined;
  if (own) {
    let result;
    try {
      result = JSON.parse(readFileSync(join(gtestDir, own), 'utf8'));
    } catch {
      result = undefined;
    }
    if (result) {
      let left = 0;
      for (const suite of result.testsuites ?? []) {
        for (const item of suite.testsuite ?? []) {
          if (item.result === 'SKIPPED') {
            left += 1;
            console.error(`skipped: ${program} ${suite.name}.${item.name}`);
          }
        }
      }
      const bad = result.failures + (result.errors ?? 0);
      passed += result.tests - bad - (result.disabled ?? 0) - left;
      skipped += left + (result.disabled ?? 0);
      failed += bad;
      if (how !== 'run' && bad === 0) {
        failed += 1;
        console.error(`failed: ${test.name}: its cases passed but the program ended badly`);
      }
      continue;
    }
  }
  if (how === 'run') passed += 1;
  else if (how === 'disabled' || how === 'notrun') {
    skipped += how === 'disabled' ? 1 : 0;
    failed += how === 'notrun' ? 1 : 0;
    console.error(`${how}: ${test.name}`);
  } else {
    failed += 1;
    console.error(`failed: ${test.name}`);
  }
}
console.log(`${passed} ${failed} ${skipped}`);
