/** What a painting without a title is called. */
const untitled = 'Painting';

/** The first title of a small study of a painting; hers to change. */
export const studyTitle = (title: string): string => `${title || untitled}, small study`;
