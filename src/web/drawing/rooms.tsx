import type { Room } from '../worker/told-answer.js';

/** What an output that is touched carries, or what more fits there. */
export function TouchedRoom({ rooms, output }: { readonly rooms: readonly Room[]; readonly output: string | null }) {
  const room = rooms.find((one) => one.output === output);
  if (room === undefined) return null;
  return (
    <p role="status" class="room">
      <b>{room.name}.</b> {room.texts.join(' ')}
    </p>
  );
}

/** The same of all outputs, for whoever touches nothing. */
export const Rooms = ({ rooms }: { readonly rooms: readonly Room[] }) => (
  <details>
    <summary>What more fits on each output</summary>
    <ul>
      {rooms.map(({ output, name, texts }) => (
        <li key={output}>
          <b>{name}.</b> {texts.join(' ')}
        </li>
      ))}
    </ul>
  </details>
);
