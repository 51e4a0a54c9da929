const said: ReadonlyMap<string, string> = new Map([
  [
    'hue-cadmium-yellow',
    'In your box, “cadmium yellow, PY35” was measured from a substitute: it is now “cadmium yellow hue”. If your tube says PY35, tick that one instead.',
  ],
  [
    'hue-lemon-yellow',
    'In your box, “lemon yellow, PY175” was measured from a tube that does not name its pigment: it is now “lemon yellow hue”. If your tube says PY175, tick that one instead.',
  ],
]);

/** What a painter whose box held such a paint is told once; nothing for other ids. */
export const renamedInWords = (id: string): string | undefined => said.get(id);
