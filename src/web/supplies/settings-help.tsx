/** What is meant by what is asked of any answer. */
export const SettingsHelp = () => (
  <details class="help">
    <summary>What these mean</summary>
    <dl>
      {meanings.map(([setting, meaning]) => (
        <div key={setting}>
          <dt>{setting}</dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
  </details>
);

const meanings = [
  ['Budget', 'the most that may be spent; the choices show what goes beyond it as well, marked so'],
  ['Mains sockets', 'how many are free where you play; each supply on the mains takes one'],
  ['Mains volts', 'those of the places where you play: a supply that does not accept all of them is left out'],
  [
    'Hours on power banks',
    'how long one must last with what hangs on it, by 80 % of its watt-hours; without hours none is used',
  ],
  [
    'Hours on batteries',
    'the hours of playing whose sets are paid for; a set must last 8 hours, and without hours none is used',
  ],
  ['What counts most', 'what the answer is the best in; what else there is stands among the choices'],
] as const;
