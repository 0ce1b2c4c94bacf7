import fc from 'fast-check';

fc.configureGlobal({ seed: 20_000, endOnFailure: true });
