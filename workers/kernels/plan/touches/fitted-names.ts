/** A sentence about a technique is at most about this long. */
const longest = 160;

/** A sentence with as many of the names as there is room for, always the first `always` of them. */
export function fittedNames(
  sentence: (names: string) => string,
  names: readonly string[],
  between: string,
  always = 1,
): string {
  for (let count = names.length; count > always; count--) {
    const text = sentence(names.slice(0, count).join(between));
    if (text.length <= longest) return text;
  }
  return sentence(names.slice(0, always).join(between));
}
