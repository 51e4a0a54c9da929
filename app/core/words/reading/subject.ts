import { lostUnder, type SubjectFacts, standsOutFrom } from '../../reading/subject/subject.ts';

function againstGround({ meanLightness }: SubjectFacts): string {
  const difference = meanLightness.subject - meanLightness.ground;
  const size = Math.abs(difference);
  if (size < lostUnder) return 'as light as its background';
  const word = difference > 0 ? 'lighter' : 'darker';
  return `${size < standsOutFrom ? 'a little' : 'clearly'} ${word} than its background`;
}

function alongLine(share: number): string {
  if (share >= 0.85) return 'stands out nearly all round';
  if (share >= 0.5) return 'stands out along most of its line';
  if (share >= 0.15) return 'stands out along only part of its outline';
  return 'hardly stands out anywhere';
}

function lostPart(share: number): string {
  if (share >= 0.5) return 'Most of its line is lost in the background';
  if (share >= 0.42) return 'Nearly half of its line is lost in the background';
  if (share >= 0.29) return 'About a third of its line is lost in the background';
  if (share >= 0.2) return 'About a quarter of its line is lost in the background';
  if (share >= 0.05) return 'A little of its line is lost in the background';
  return 'Its line is lost nowhere';
}

/** What to do about it, after the practice of lost and found edges (common practice, no source). */
function advice({ standsOutShare, lostShare }: SubjectFacts): string {
  if (standsOutShare < 0.15)
    return ': make the background lighter or darker where it is to be seen.';
  if (lostShare < 0.05 && standsOutShare >= 0.85)
    return ': soften it where it matters least, or it looks cut out.';
  return '.';
}

/** How the subject stands against its ground, in a painter's words. */
export function subjectSentence(facts: SubjectFacts): string {
  const first = `The subject is ${againstGround(facts)} and ${alongLine(facts.standsOutShare)}.`;
  return `${first} ${lostPart(facts.lostShare)}${advice(facts)}`;
}
