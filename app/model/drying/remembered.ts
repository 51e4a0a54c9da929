import type { DryingConditions } from './fair-conditions.ts';

const most = 32;

/**
 * The same function of the conditions, with the last answers kept: a session is folded anew after
 * every tap, and each answer takes a millisecond or two. Answers are shared: they must not be changed.
 */
export function remembered<T>(
  of: (conditions: DryingConditions) => T,
): (conditions: DryingConditions) => T {
  const answers = new Map<string, T>();
  return (conditions) => {
    const { waterGramsPerSquareMetre, paperGsm, weather } = conditions;
    const { celsius, humidity, airSpeed, sunWatts, backing, hairDryer } = weather;
    const figures = [waterGramsPerSquareMetre, paperGsm, celsius, humidity, airSpeed, sunWatts];
    const key = [...figures, backing, hairDryer].join(' ');
    const known = answers.get(key);
    if (known !== undefined) return known;
    const answer = of(conditions);
    const [oldest] = answers.keys();
    if (answers.size >= most && oldest !== undefined) answers.delete(oldest);
    answers.set(key, answer);
    return answer;
  };
}
