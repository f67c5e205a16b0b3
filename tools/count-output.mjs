// node tools/count-output.mjs LOG EXIT_STATUS   ->   "passed failed skipped"
//
// Reads the last count a test program printed, whichever way it counts, and does not
// believe "0 failed" from a program that ended badly.
import { readFileSync } from 'node:fs';

export function count(text, status) {
  const clean = text.replace(/\u001b\[[0-9;]*m/g, '');
  const last = (pattern) => [...clean.matchAll(pattern)].pop();
  let passed = 0;
  let failed = 0;
  let skipped = 0;
  const own = last(/\b(\d+) passed, (\d+) failed(?:, (\d+) skipped)?/g);
  const node = last(/^[#\u2139] pass (\d+)$/gm);
  if (own) {
    [passed, failed, skipped] = [Number(own[1]), Number(own[2]), Number(own[3] ?? 0)];
  } else if (node) {
    passed = Number(node[1]);
    failed = Number(last(/^[#\u2139] fail (\d+)$/gm)?.[1] ?? 0);
    skipped = Number(last(/^[#\u2139] skipped (\d+)$/gm)?.[1] ?? 0);
  } else if (status === 0) {
    passed = 1;
  }
  if (status !== 0 && failed === 0) failed = 1;
  return { passed, failed, skipped };
}

if (process.argv[1]?.endsWith('count-output.mjs')) {
  const { passed, failed, skipped } = count(readFileSync(process.argv[2], 'utf8'), Number(process.argv[3]));
  console.log(`${passed} ${failed} ${skipped}`);
}
