/**
 * Starts the solving process for its parent and passes messages on. A process inherits the peak of the one that starts it,
 * which would hide its own behind that of a bench that has run for a while; this one is small and solves nothing.
 */
import { fork } from 'node:child_process';
import process from 'node:process';
import { fileURLToPath, URL } from 'node:url';

const child = fork(fileURLToPath(new URL('solve-child.mjs', import.meta.url)), { serialization: 'advanced' });
process.once('message', (question) => child.send(question));
child.on('message', (report) => process.send(report));
// Comes after the last message, also where the child breaks down.
child.on('disconnect', () => process.disconnect());
process.on('disconnect', () => child.kill());
