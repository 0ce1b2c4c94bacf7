import type { Customers } from '../customers.js';
import { firstOf, type KeptBoard } from '../document/shelf.js';

/** So many stand there unfolded. */
const mostShown = 6;

/** The boards of the customers before, each a click away. */
export function LastBoards({ customers: { others, said, backTo } }: { readonly customers: Customers }) {
  if (others.value.length === 0) return null;
  const older = others.value.slice(mostShown);
  return (
    <section aria-labelledby="last-boards-heading">
      <h2 id="last-boards-heading">The last boards</h2>
      <p class="minor" role="status">
        {said.value}
      </p>
      <List boards={others.value.slice(0, mostShown)} backTo={backTo} />
      {older.length > 0 && (
        <details>
          <summary>{older.length === 1 ? '1 older board' : `${older.length} older boards`}</summary>
          <List boards={older} backTo={backTo} />
        </details>
      )}
    </section>
  );
}

type ListProps = Pick<Customers, 'backTo'> & { readonly boards: readonly KeptBoard[] };

const List = ({ boards, backTo }: ListProps) => (
  <ol class="last-boards">
    {boards.map((board) => (
      <li key={board.id}>
        <button type="button" onClick={() => backTo(board)}>
          <b>{board.name}</b>
          <span class="minor">
            {dayText(board.changed)}, {pedalsText(board)}
          </span>
        </button>
      </li>
    ))}
  </ol>
);

const dayText = (changed: number): string =>
  new Date(changed).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

function pedalsText({ name, pedals }: KeptBoard): string {
  const [count, first] = [pedals.length === 1 ? '1 pedal' : `${pedals.length} pedals`, firstOf(pedals)];
  return pedals.length === 0 || name === first ? count : `${count}: ${first}`;
}
