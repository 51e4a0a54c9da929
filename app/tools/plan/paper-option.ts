import type { PaperChoice } from '../../model/drying/paper-choice.ts';
import { CommandError } from './command-error.ts';

const lightest = 50;
const heaviest = 1200;

/** --paper: '300' or '300,cellulose'. Errors: `CommandError`. */
export function paperOption(text: string): PaperChoice {
  const found = /^(\d+)(?:,(cotton|cellulose))?$/.exec(text);
  const gsm = Number(found?.[1]);
  if (!found || gsm < lightest || gsm > heaviest) {
    throw new CommandError(
      `--paper must be GSM or GSM,cotton or GSM,cellulose, GSM from ${lightest} to ${heaviest}, not "${text}"`,
    );
  }
  return { gsm, fibre: found[2] === 'cellulose' ? 'cellulose' : 'cotton' };
}
