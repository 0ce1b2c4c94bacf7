/** What to begin with, for each who comes to an empty page. */
export const FirstSteps = () => (
  <ul class="first-steps">
    <li>
      <b>Your own board:</b> type a pedal, as much as you know of it. What you leave out is planned for, and the page
      says what to read on its label.
    </li>
    <li>
      <b>One pedal more:</b> open the file of your board and type the new pedal. What moves is shown, in the order in
      which it is safe.
    </li>
    <li>
      <b>At a counter:</b> open the table of what your shop sells. It stays here; F8 begins the next customer’s board.
    </li>
  </ul>
);
