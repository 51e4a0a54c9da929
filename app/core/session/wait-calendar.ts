/** A moment to look at the sheet, for any calendar. */
export interface CalendarEntry {
  readonly id: string;
  readonly title: string;
  /** Ms since 1970. */
  readonly fromMs: number;
  readonly untilMs: number;
  readonly madeMs: number;
}

/** '20310505T093000Z'. */
const stamp = (wallMs: number): string =>
  new Date(wallMs).toISOString().replace(/[-:]|\.\d{3}/g, '');

/** Of TEXT; a new line, and what would end a value. */
const escaped = (text: string): string =>
  text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r?\n/g, '\\n');

/** Octets of a sign in UTF-8; the core has no encoder of the browser's. */
function octetsOf(sign: string): number {
  const point = sign.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

/** No line longer than 75 octets: what goes on is told by a blank. */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const sign of line) {
    if (octets + octetsOf(sign) > 75) {
      out += '\r\n ';
      octets = 1;
    }
    out += sign;
    octets += octetsOf(sign);
  }
  return out;
}

/** One entry that calls when it begins, as a file: iCalendar, RFC 5545. */
export function calendarFile({ id, title, fromMs, untilMs, madeMs }: CalendarEntry): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Firstwash//Drying//EN',
    'BEGIN:VEVENT',
    `UID:${id}@firstwash`,
    `DTSTAMP:${stamp(madeMs)}`,
    `DTSTART:${stamp(fromMs)}`,
    `DTEND:${stamp(untilMs)}`,
    `SUMMARY:${escaped(title)}`,
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escaped(title)}`,
    'TRIGGER:PT0S',
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}
