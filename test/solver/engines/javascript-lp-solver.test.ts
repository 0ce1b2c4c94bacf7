import { load } from '../../../solver/engines/javascript-lp-solver.js';
import { conforms } from './conformance.js';

conforms(load);
