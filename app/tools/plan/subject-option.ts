import type { Point } from '../../model/lab.ts';
import type { SubjectStroke } from '../../model/subject.ts';
import { CommandError } from './command-error.ts';

const fewest = 3;

function pointFrom(text: string): Point | null {
  const found = /^(\d*\.?\d+),(\d*\.?\d+)$/.exec(text);
  const [x, y] = [Number(found?.[1]), Number(found?.[2])];
  return x >= 0 && x <= 1 && y >= 0 && y <= 1 ? [x, y] : null;
}

/** --subject: 'X,Y X,Y X,Y ...', a loose loop round the subject, 0..1 of the cropped photo. Errors: `CommandError`. */
export function subjectOption(text: string): SubjectStroke {
  const points = text.trim().split(/\s+/).map(pointFrom);
  const path = points.filter((point) => point !== null);
  if (path.length === points.length && path.length >= fewest) {
    return { mode: 'circle', path, brush: 0 };
  }
  throw new CommandError(
    `--subject must be at least ${fewest} places "X,Y X,Y X,Y" round the subject, each from 0 to 1, not "${text}"`,
  );
}
