import { expect, test } from 'vitest';
import { calendarFile } from '../../../../app/core/session/wait-calendar.ts';

// Source: RFC 5545 (iCalendar), 3.1 content lines, 3.3.5 date-time, 3.3.11 text, 3.6.6 alarm.

const entry = {
  id: 'wait-1',
  title: 'Look at the sheet: ground, first wash; then on',
  fromMs: Date.UTC(2031, 4, 5, 9, 30),
  untilMs: Date.UTC(2031, 4, 5, 10, 17),
  madeMs: Date.UTC(2031, 4, 5, 9),
};

test('an entry from the earliest look on, that calls when it begins', () => {
  const lines = calendarFile(entry).split('\r\n');
  expect(lines[0]).toBe('BEGIN:VCALENDAR');
  expect(lines.at(-2)).toBe('END:VCALENDAR');
  expect(lines).toContain('DTSTART:20310505T093000Z');
  expect(lines).toContain('DTEND:20310505T101700Z');
  expect(lines).toContain('SUMMARY:Look at the sheet: ground\\, first wash\\; then on');
  expect(lines.slice(lines.indexOf('BEGIN:VALARM'), lines.indexOf('END:VALARM'))).toEqual([
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    'DESCRIPTION:Look at the sheet: ground\\, first wash\\; then on',
    'TRIGGER:PT0S',
  ]);
});

test('long lines are folded at 75 octets, and nothing of them is lost', () => {
  const title = `Blick auf das Blatt: ${'ü'.repeat(90)}`;
  const file = calendarFile({ ...entry, title });
  for (const line of file.split('\r\n'))
    expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(file.replaceAll('\r\n ', '')).toContain(`SUMMARY:${title}`);
});

// Octets of a sign in UTF-8: RFC 3629, 3. A line is cut as late as it may be: one sign more would be over 75.
test.each(['a', 'ü', '漢', '🎨'])(
  'a title of %s alone fills its lines, and no sign is torn',
  (sign) => {
    const lines = calendarFile({ ...entry, title: sign.repeat(90) }).split('\r\n');
    const octets = (line: string): number => new TextEncoder().encode(line).length;
    const first = lines.findIndex((line) => line.startsWith('SUMMARY:'));
    for (let n = first; lines[n + 1]?.startsWith(' '); n++) {
      expect(octets(lines[n] ?? '')).toBeLessThanOrEqual(75);
      expect(octets((lines[n] ?? '') + sign)).toBeGreaterThan(75);
      expect(lines[n]).not.toContain('\uFFFD');
    }
    expect(lines[first + 1]).toMatch(/^ /);
  },
);
