// node tools/check-includes.mjs [--self-test]
//
// All rooms share one include root, so linking alone does not stop a stray #include.
// This compares the #include lines of src/<room>/ with the USES lists of CMakeLists.txt,
// and keeps out of each layer what docs/house.md says it must not touch.
// Prints each finding as file:line, then "N passed, N failed" (one check a file).
import { readFileSync, readdirSync, existsSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Rooms with what they may use, from wm_room(...) lines, and layers from rooms.cmake. */
export function readRooms(cmakeText, roomsText) {
  const rooms = new Map();
  const bare = cmakeText.replace(/#.*$/gm, '');
  for (const [, name, rest] of bare.matchAll(/\bwm_room\s*\(\s*(\w+)([^)]*)\)/g)) {
    const uses = /\bUSES\b([^)]*?)(?:\bNEEDS\b|$)/s.exec(rest)?.[1] ?? '';
    rooms.set(name, { uses: new Set(uses.trim().split(/\s+/).filter(Boolean)), layer: undefined });
  }
  for (const [, name, layer] of roomsText.matchAll(/set\s*\(\s*wm_layer_(\w+)\s+(\d+)\s*\)/g)) {
    if (rooms.has(name)) rooms.get(name).layer = Number(layer);
  }
  return rooms;
}

/** Comments and the inside of literals blanked, line breaks kept. Include lines keep their name. */
export function withoutCommentsAndText(source) {
  const pattern = /\/\/[^\n]*|\/\*[\s\S]*?\*\/|R"([^()\\\s]{0,16})\([\s\S]*?\)\1"|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])+'/g;
  return source.replace(pattern, (found, _delimiter, offset) => {
    if (found[0] === '"') {
      const line = source.slice(source.lastIndexOf('\n', offset) + 1, offset);
      if (/^\s*#\s*include\s*$/.test(line)) return found;
      return '""';
    }
    // A digit separator (10'000) is no character literal.
    if (found[0] === "'" && /[0-9a-fA-F]/.test(source[offset - 1] ?? '')) return found;
    return found.replace(/[^\n]/g, ' ');
  });
}

// What the pure rooms (layers 0 to 3) must not reach for.
const impureHeaders = new Map(Object.entries({
  fstream: 'files', filesystem: 'files', iostream: 'standard streams', cstdio: 'files',
  'stdio.h': 'files', thread: 'threads', mutex: 'threads', shared_mutex: 'threads',
  future: 'threads', condition_variable: 'threads', atomic: 'threads', locale: 'the locale',
  clocale: 'the locale', ctime: 'the clock', 'time.h': 'the clock', cerrno: 'the system',
  'unistd.h': 'the system', 'fcntl.h': 'the system',
  expected: 'lacks in the portable library', source_location: 'lacks in the portable library',
  format: 'lacks in the portable library', memory_resource: 'lacks in the portable library',
}));
const impureWords = [
  [/\brandom_device\b/, 'random_device: randomness needs a seed that is handed in'],
  [/\b(?:system|steady|high_resolution|utc|file)_clock\b/, 'a clock: time is handed in as an argument'],
  [/\b(?:secure_)?getenv\s*\(/, 'getenv: the environment is not for pure rooms'],
  [/\bsetlocale\s*\(/, 'setlocale'],
  [/\bstd::(?:time|clock|rand|srand)\s*\(/, 'the C clock or random numbers'],
  [/\bstd::unreachable\b/, 'std::unreachable: the portable library lacks it'],
  [/\bstd::(?:ranges::)?views::/, 'ranges views: the portable library lacks them'],
  [/\bstd::(?:strtod|stod|stof|atof)\b|\bstrtod\s*\(/, 'strtod and its like obey the locale: use quantity::parse_number'],
];

// Libraries that belong to a few rooms, and never into a header of ours.
const confined = [
  [/^nlohmann\//, 'JSON', ['calculation', 'record', 'binder', 'service', 'cli']],
  [/^toml\+\+\//, 'TOML', ['calculation', 'binder', 'cli']],
  [/^sqlite3(?:ext)?\.h$/, 'SQLite', ['record']],
  [/^httplib\.h$/, 'HTTP', ['service', 'cli']],
  [/^CLI\//, 'the command-line parser', ['cli']],
  [/^(?:sys\/socket|netinet\/\w+|arpa\/inet|netdb)\.h$/, 'sockets', ['service', 'cli']],
];

const isPrivate = (path) => path.split('/')[1] === 'detail';

/** Findings of one file: [{line, what}]. `path` is relative to src/. */
export function findings(path, source, rooms) {
  const room = path.split('/')[0];
  const me = rooms.get(room);
  if (!me) return [{ line: 1, what: `the room '${room}' has no wm_room line in CMakeLists.txt` }];
  const header = /\.(?:hpp|h)$/.test(path);
  const pure = me.layer !== undefined && me.layer <= 3;
  const found = [];
  withoutCommentsAndText(source).split('\n').forEach((text, index) => {
    const say = (what) => found.push({ line: index + 1, what });
    const include = /^\s*#\s*include\s*[<"]([^>"]+)[>"]/.exec(text)?.[1];
    if (!include) {
      if (pure) for (const [pattern, what] of impureWords) if (pattern.test(text)) say(what);
      return;
    }
    const parts = include.split('/');
    // Generated tables belong to the room whose data they are.
    const other = parts[0] === 'tables' ? parts[1] : parts[0];
    if (rooms.has(other) && parts.length > 1 && other !== room) {
      if (!me.uses.has(other)) say(`"${include}": '${room}' does not list '${other}' in its USES`);
      if (parts[1] === 'detail') say(`"${include}": detail/ is private to '${other}'`);
    }
    if (include.startsWith('..')) say(`"${include}": name the room, not the way to it`);
    if (pure && impureHeaders.has(include)) {
      say(`<${include}>: layer ${me.layer} must not touch it (${impureHeaders.get(include)})`);
    }
    if (pure && /^sys\//.test(include)) say(`<${include}>: layer ${me.layer} must not touch the system`);
    for (const [pattern, name, allowed] of confined) {
      if (!pattern.test(include)) continue;
      // A private header may name the JSON type to its own sources, without its body.
      if (header && include === 'nlohmann/json_fwd.hpp' && isPrivate(path) && allowed.includes(room)) continue;
      if (header) say(`<${include}>: ${name} never appears in a header of ours`);
      else if (!allowed.includes(room)) say(`<${include}>: ${name} belongs to ${allowed.join(', ')}`);
    }
  });
  return found;
}

function filesUnder(dir) {
  return readdirSync(dir, { withFileTypes: true }).flatMap((entry) => {
    const path = join(dir, entry.name);
    if (entry.isDirectory()) return filesUnder(path);
    return /\.(?:hpp|h|cpp)$/.test(entry.name) ? [path] : [];
  });
}

function selfTest() {
  const rooms = readRooms(
    'wm_room(outcome)\nwm_room(quantity USES outcome NEEDS fmt::fmt)\nwm_room(hose USES outcome) # quantity\n' +
    'wm_room(record USES outcome)\n',
    'set(wm_layer_outcome 0)\nset(wm_layer_quantity 0)\nset(wm_layer_hose 1)\nset(wm_layer_record 4)\n');
  const cases = [
    ['hose/a.cpp', '#include "quantity/text.hpp"\n', 'USES'],
    ['quantity/a.cpp', '#include "outcome/detail/x.hpp"\n', 'private'],
    ['quantity/a.cpp', '#include "tables/hose/x.hpp"\n', 'USES'],
    ['hose/a.cpp', '#include <fstream>\n', 'files'],
    ['hose/a.cpp', '#include <expected>\n', 'portable'],
    ['hose/a.cpp', 'auto n = std::chrono::system_clock::now();\n', 'clock'],
    ['hose/a.cpp', 'const char* p = std::getenv("HOME");\n', 'getenv'],
    ['hose/a.cpp', '#include <nlohmann/json.hpp>\n', 'JSON belongs'],
    ['record/a.hpp', '#include <sqlite3.h>\n', 'never appears'],
    ['record/detail/a.hpp', '#include <nlohmann/json_fwd.hpp>\n', null],
    ['record/a.hpp', '#include <nlohmann/json_fwd.hpp>\n', 'never appears'],
    ['record/a.cpp', '#include <httplib.h>\n', 'HTTP belongs'],
    ['kitchen/a.cpp', '\n', 'no wm_room'],
    ['quantity/a.cpp', '// #include <fstream> and getenv("x")\nauto s = "system_clock"; // std::rand()\n' +
      '#include "outcome/result.hpp"\n#include <string>\nint n = 10\'000; char c = \'"\';\n', null],
    ['record/a.cpp', '#include <fstream>\n#include <sqlite3.h>\n', null],
  ];
  let failed = 0;
  for (const [path, source, expected] of cases) {
    const got = findings(path, source, rooms).map((f) => f.what).join('; ');
    const good = expected === null ? got === '' : got.includes(expected);
    if (!good) {
      failed += 1;
      console.log(`self-test ${path}: expected ${expected ?? 'nothing'}, got '${got}'`);
    }
  }
  return [cases.length - failed, failed];
}

let [passed, failed] = selfTest();
if (!process.argv.includes('--self-test')) {
  const rooms = readRooms(readFileSync(join(root, 'CMakeLists.txt'), 'utf8'),
    readFileSync(join(root, 'cmake/rooms.cmake'), 'utf8'));
  const src = join(root, 'src');
  for (const file of existsSync(src) ? filesUnder(src).sort() : []) {
    const found = findings(relative(src, file).split('\\').join('/'), readFileSync(file, 'utf8'), rooms);
    for (const { line, what } of found) console.log(`${relative(root, file)}:${line}: ${what}`);
    if (found.length > 0) failed += 1;
    else passed += 1;
  }
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
