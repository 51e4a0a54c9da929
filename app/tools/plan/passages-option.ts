import { type PassagesChoice, passagesChoices } from '../../model/passages-choice.ts';
import { CommandError } from './command-error.ts';

const optionOf = (choice: PassagesChoice): string => choice.replace(' ', '-');

/** --passages: 'ground-first', 'subject-first' or 'together'. Errors: `CommandError`. */
export function passagesOption(text: string): PassagesChoice {
  const found = passagesChoices.find((choice) => optionOf(choice) === text);
  if (found) return found;
  throw new CommandError(
    `--passages must be ${passagesChoices.map(optionOf).join(' or ')}, not "${text}"`,
  );
}
