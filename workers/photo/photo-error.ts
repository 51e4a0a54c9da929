/**
 * A photo that can't be used; the message is a painter's sentence. A plain Error with a name,
 * since the class would not survive the way from worker to page.
 */
export function photoError(sentence: string, cause?: unknown): Error {
  const error = new Error(sentence, { cause });
  error.name = 'PhotoError';
  return error;
}
