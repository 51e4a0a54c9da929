/**
 * Every sentence of a table by its code, with the figures it is made from: `{ say: 'title/mask', count: 3, ... }`.
 * Figures are numbers, codes, names of paints, or what other tables say; never ready English.
 */
export type SaidBy<Table> = {
  [Code in keyof Table]: Table[Code] extends () => string
    ? { readonly say: Code }
    : Table[Code] extends (figures: infer Figures) => string
      ? { readonly say: Code } & Figures
      : never;
}[keyof Table];

/** What a table says of one of its codes. A sentence of an older plan was stored ready, and stays as it is. */
export function sayBy<Table extends Readonly<Record<string, (figures: never) => string>>>(
  table: Table,
): (said: SaidBy<Table> | string) => string {
  return (said) =>
    typeof said === 'string' ? said : table[said.say as keyof Table](said as never);
}

/** The same sentence as another, figure by figure; for comparing what is said without saying it. */
export const saidKey = (said: object | string): string => JSON.stringify(said);
