/** One of the pictures made to break things, as a file a painter would choose. */
export async function casePhoto(name: string, type = ''): Promise<Blob> {
  const url = new URL(`../../fixtures/cases/${name}`, import.meta.url);
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return new Blob([await answer.arrayBuffer()], { type });
}
