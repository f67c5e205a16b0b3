/// The next limits along the calendar: a dot for the day, a bar where only a range is known.

import type { JSX } from "preact";
import { dayInWords } from "../kit/time";
import { spread } from "./band_shape";

export interface AheadItem {
  id: string;
  name: string;
  href?: string;
  /// The day, or the most probable one.
  on: string;
  earliest?: string;
  latest?: string;
  note?: string;
}

const k_w = 420;
const k_pad = 12;
const k_day = 86_400_000;
const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const time = (iso: string): number => Date.parse(`${iso}T00:00:00Z`);

export function Ahead(props: { items: AheadItem[]; from: string }): JSX.Element {
  const items = [...props.items].sort((a, b) => time(a.on) - time(b.on));
  if (items.length === 0) return <p class="none">No limit falls in sight.</p>;
  const start = time(props.from);
  const end = Math.max(start + 120 * k_day, ...items.map((i) => time(i.latest ?? i.on))) + 15 * k_day;
  const x = (iso: string): number => k_pad + ((time(iso) - start) / (end - start)) * (k_w - 2 * k_pad);
  const numbers = spread(items.map((i) => ({ at: x(i.on), w: 22 })), k_w, 3);
  return (
    <div class="ahead">
      <svg class="drawing" viewBox={`0 0 ${k_w} 84`} role="img" aria-label={`Calendar with ${items.length} limits ahead; each is in the list that follows.`}>
        <line class="outline" x1={0} x2={k_w} y1={52} y2={52} />
        {ticks(start, end).map((t) => {
          const at = k_pad + ((t.at - start) / (end - start)) * (k_w - 2 * k_pad);
          return (
            <g key={t.at}>
              <line class="thin" x1={at} x2={at} y1={52} y2={58} />
              <text class="plan-label" x={at} y={74} text-anchor="middle">{t.name}</text>
            </g>
          );
        })}
        {items.map((item, i) => (
          <g key={item.id}>
            {item.earliest && item.latest ? <rect class="ahead-range" x={x(item.earliest)} y={47} width={Math.max(2, x(item.latest) - x(item.earliest))} height={10} /> : null}
            <path class="thin" d={`M${numbers[i]} 27L${x(item.on)} 46`} />
            <circle class="ahead-dot" cx={x(item.on)} cy={52} r={4.5} />
            <text class="ahead-number" x={numbers[i]} y={21} text-anchor="middle">{letter(i)}</text>
          </g>
        ))}
      </svg>
      <ol class="ahead-list">
        {items.map((item, i) => (
          <li key={item.id}>
            <span class="ahead-letter">{letter(i)}</span>
            <span class="ahead-name">{item.href ? <a href={item.href}>{item.name}</a> : item.name}{item.note ? <span class="stripe-note">{item.note}</span> : null}</span>
            <span class="figure">{dayInWords(item.on)}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}

function letter(i: number): string {
  return String.fromCharCode(97 + (i % 26));
}

function ticks(start: number, end: number): { at: number; name: string }[] {
  const out: { at: number; name: string }[] = [];
  const first = new Date(start);
  const months = (end - start) / (30.4 * k_day);
  const step = months > 30 ? 12 : months > 14 ? 6 : months > 7 ? 3 : 1;
  for (let k = 1; k < 400; k++) {
    const at = Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + k, 1);
    if (at > end) break;
    const month = new Date(at).getUTCMonth();
    if (month % step !== 0) continue;
    const year = month === 0 ? ` ${new Date(at).getUTCFullYear()}` : "";
    out.push({ at, name: `${monthNames[month]}${year}` });
  }
  return out;
}
