/// Days and instants as this device sees them. The server decides what a date means.

const two = (n: number): string => String(n).padStart(2, "0");

/// "2026-11-25" by the clock on the wall.
export function today(now: Date = new Date()): string {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/// RFC 3339 with the offset of this place: "2026-11-25T09:12:00+01:00".
export function instant(when: Date = new Date(), offsetMinutes: number = -when.getTimezoneOffset()): string {
  const local = new Date(when.getTime() + offsetMinutes * 60_000);
  const sign = offsetMinutes < 0 ? "-" : "+";
  const away = Math.abs(offsetMinutes);
  return `${local.toISOString().slice(0, 19)}${sign}${two(Math.floor(away / 60))}:${two(away % 60)}`;
}

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// "25 Nov 2026" from "2026-11-25" (or the day of an instant); other text is left as it is.
export function dayInWords(iso: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso);
  const month = match ? months[Number(match[2]) - 1] : undefined;
  if (!match || !month) return iso;
  return `${Number(match[3])} ${month} ${match[1]}`;
}
