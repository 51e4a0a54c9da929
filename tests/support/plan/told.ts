import {
  type MeetingSaid,
  nameMeeting,
  nameShape,
  type ShapeSaid,
} from '../../../app/core/words/plan/names.ts';
import { brushesInWords } from '../../../app/core/words/plan/tools.ts';
import { type Sentence, words } from '../../../app/core/words/plan/words.ts';

/** Something with all that it says in words: sentences that follow each other, and brushes, as one text. */
export type Told<T> = T extends { readonly say: string }
  ? string
  : T extends ArrayBufferView
    ? T
    : T extends object
      ? { [K in keyof T]: K extends 'watch' | 'soften' | 'brush' ? string : Told<T[K]> }
      : T;

const begins = (value: object, kind: string): boolean =>
  'say' in value && String(value.say).startsWith(kind);
const isShape = (value: object): value is ShapeSaid => begins(value, 'shape/');
const isMeeting = (value: object): value is MeetingSaid => begins(value, 'meeting/');
const isSaid = (value: object): value is Exclude<Sentence, string> => 'say' in value;

function toldField(key: string, value: unknown): unknown {
  if (key === 'brush') return brushesInWords(value as never).join('; ');
  return key === 'watch' || key === 'soften' ? words(value as never) : told(value);
}

/** A plan, a step, a warning, as they are shown: every code of `words/plan` in words, whatever else it holds. */
export function told<T>(value: T): Told<T> {
  const tell = (): unknown => {
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
    if (isShape(value)) return nameShape(value);
    if (isMeeting(value)) return nameMeeting(value);
    if (isSaid(value)) return words(value);
    if (Array.isArray(value)) return value.map(told);
    return Object.fromEntries(
      Object.entries(value).map(([key, field]) => [key, toldField(key, field)]),
    );
  };
  return tell() as Told<T>;
}
