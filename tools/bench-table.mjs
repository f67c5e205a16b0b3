// node tools/bench-table.mjs OUT_DIR RESULTS_DIR
//
// Reads what the benchmarks printed (JSON lines of our own, or the JSON of Google
// Benchmark), prints one table, and writes RESULTS_DIR/<date>-<commit>.json.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { cpus, release, totalmem } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Rows {bench, act, value, unit, peer, peer_value, ratio, aim, note} of one program's output. */
export function rowsOf(bench, text) {
  const library = /^\s*\{\s*"context"/.test(text);
  if (library) {
    return JSON.parse(text).benchmarks
      .filter((b) => b.run_type !== 'aggregate' || b.aggregate_name === 'median')
      .map((b) => ({ bench, act: b.run_name ?? b.name, value: b.real_time, unit: b.time_unit,
        ...(b.error_occurred ? { note: `error: ${b.error_message}` } : {}) }));
  }
  return text.split('\n').filter((line) => line.trimStart().startsWith('{')).map((line) => {
    const row = { bench, ...JSON.parse(line) };
    if (row.ratio === undefined && Number.isFinite(row.peer_value) && row.peer_value !== 0) {
      row.ratio = row.value / row.peer_value;
    }
    return row;
  });
}

const figure = (x) => (typeof x === 'number' && Number.isFinite(x) ? Number(x.toPrecision(3)).toString() : String(x ?? ''));

export function table(rows) {
  const heads = ['benchmark', 'act', 'median', 'unit', 'peer', 'peer median', 'ratio', 'aim', 'note'];
  const cells = rows.map((r) => [r.bench, r.act, figure(r.value), r.unit ?? '', r.peer ?? '',
    figure(r.peer_value), figure(r.ratio), String(r.aim ?? ''), r.note ?? '']);
  const used = heads.map((head, i) => i < 4 || cells.some((row) => row[i] !== ''));
  const lines = [heads, ...cells].map((row) => row.filter((_, i) => used[i]));
  const widths = lines[0].map((_, i) => Math.max(...lines.map((row) => String(row[i] ?? '').length)));
  return lines.map((row) => row.map((text, i) => String(text ?? '').padEnd(widths[i])).join('  ').trimEnd()).join('\n');
}

function git(...words) {
  try {
    return execFileSync('git', words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  } catch {
    return '';
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [outDir, resultsDir] = process.argv.slice(2);
  const rows = [];
  for (const name of readdirSync(outDir).filter((n) => n.endsWith('.out')).sort()) {
    const bench = name.replace(/\.out$/, '');
    try {
      const found = rowsOf(bench, readFileSync(join(outDir, name), 'utf8'));
      rows.push(...(found.length > 0 ? found : [{ bench, act: '', note: 'printed no result' }]));
    } catch (error) {
      rows.push({ bench, act: '', note: `unreadable result: ${error.message}` });
    }
  }
  const cores = cpus();
  const machine = { processor: cores[0]?.model.trim() ?? 'unknown', cores: cores.length,
    memory_gib: Math.round(totalmem() / 2 ** 30), kernel: release() };
  const commit = git('rev-parse', '--short=10', 'HEAD') || 'unknown';
  const changed = git('status', '--porcelain', '--untracked-files=no') !== '';
  const date = new Date().toISOString().slice(0, 10);
  console.log(`\n${machine.processor}, ${machine.cores} cores, ${machine.memory_gib} GiB; commit ${commit}${changed ? ' with changes' : ''}\n`);
  console.log(table(rows));
  mkdirSync(resultsDir, { recursive: true });
  const file = join(resultsDir, `${date}-${commit}.json`);
  writeFileSync(file, `${JSON.stringify({ date, commit, changed, machine, rows }, null, 1)}\n`);
  console.log(`\nWritten to ${file}`);
}
