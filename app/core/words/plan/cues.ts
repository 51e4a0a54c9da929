import { wetnessSign } from '../drying/drying-words.ts';

const dry = `Look at the sheet. Bone dry ${wetnessSign['bone dry']}.`;

/** What is heard at the easel beside the prompts of steps: where the shine stands, the end of a wait. */
export const cueSentences = {
  'cue/dry': () => dry,
  'cue/dry-again': () => `The sheet still waits. ${dry}`,
  'cue/shine-half': () => 'Half of the shine is over: the last soft edges now.',
  'cue/shine-going': () => 'The shine may be going now. Nothing wet goes in any more.',
  'cue/shine-gone': () => 'The shine should be gone. Leave it alone until it is dry.',
  'cue/time-over': () => 'The time planned for this step is over.',
};
