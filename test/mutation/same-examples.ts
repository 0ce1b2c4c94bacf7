import fc from 'fast-check';

fc.configureGlobal({ seed: 20_000, endOnFailure: true });
/** Random examples end after two seconds: what they have not noticed by then counts as survived. */
fc.installGlobalPlugin(fc.interruptAfterTimeLimit(2_000));
