/** What stands in the page beside the modules: their exports, and the lists of data/scales.js, and an exercise's uses. */
declare var strengthHandbook: {
  lists: import('../../plugins/strength_handbook/theme/assets/strength-handbook/types.js').Lists;
  uses?: Record<string, import('../../plugins/strength_handbook/theme/assets/strength-handbook/types.js').UseData>;
};
