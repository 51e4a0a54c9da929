import { type PaperChoice, paperWeights } from '../../core/drying/paper-choice.ts';
import { ChoiceRow } from './choice-row.tsx';

interface PaperRowsProps {
  paper: PaperChoice;
  onChoose: (paper: PaperChoice) => void;
  /** Level of the heading. */
  heading?: 'h3' | 'h4';
}

const weights = paperWeights.map((gsm) => [String(gsm), `${gsm} g/m²`] as const);
const fibres = [
  ['cellulose', 'Cellulose'],
  ['cotton', 'Cotton'],
] as const;

/** What she paints on: each paper is learned for itself. */
export function PaperRows({ paper, onChoose, heading: Heading = 'h4' }: PaperRowsProps) {
  return (
    <>
      <Heading>Paper</Heading>
      <ChoiceRow
        label="Weight of the paper"
        choices={weights}
        chosen={String(paper.gsm)}
        onChoose={(gsm) => onChoose({ ...paper, gsm: Number(gsm) })}
      />
      <ChoiceRow
        label="Fibre of the paper"
        choices={fibres}
        chosen={paper.fibre}
        onChoose={(fibre) => onChoose({ ...paper, fibre })}
      />
      <p class="quiet">
        The weight changes the reckoned times; weight and fibre say how many washes over each other
        it bears. What is learned of each paper is kept apart.
      </p>
    </>
  );
}
