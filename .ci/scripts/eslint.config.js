/* How the pages' scripts are checked beside their types; run in the project's folder. */
import js from '@eslint/js';
import globals from 'globals';

const RULES = {
  ...js.configs.recommended.rules,
  'eqeqeq': ['error', 'always'],
  'no-implicit-coercion': 'off',
  'no-shadow-restricted-names': 'error',
  'no-unused-vars': ['error', { args: 'after-used', caughtErrors: 'none' }],
  'no-use-before-define': ['error', { functions: false, classes: false, variables: false }],
  'no-var': 'error',
  'prefer-const': ['error', { destructuring: 'all' }],
  'no-eval': 'error',
  'no-implied-eval': 'error',
  'no-new-func': 'error',
  'no-script-url': 'error',
  'no-self-compare': 'error',
  'no-promise-executor-return': 'off',
  'no-unmodified-loop-condition': 'error',
  'no-unreachable-loop': 'error',
  'array-callback-return': ['error', { checkForEach: false }],
  'default-case-last': 'error',
  'no-restricted-properties': ['error', ...['innerHTML', 'outerHTML', 'insertAdjacentHTML'].map(property =>
    ({ property, message: 'Parts of a page are made with dom.js: a text never becomes HTML.' }))],
  'max-len': ['error', { code: 130, ignoreUrls: true, ignoreStrings: true, ignoreTemplateLiterals: true }],
  'max-lines': ['error', { max: 300 }],
};

export default [
  { ignores: ['**/node_modules/', '**/.venv/'] },
  {
    files: ['plugins/**/theme/assets/**/*.js'],
    languageOptions: { ecmaVersion: 2023, sourceType: 'module', globals: globals.browser },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: RULES,
  },
  {
    files: ['plugins/**/file_copy/*.js'],
    languageOptions: { ecmaVersion: 2023, sourceType: 'script', globals: globals.browser },
    rules: RULES,
  },
  {
    files: ['plugins/**/offline/*.js'],
    languageOptions: { ecmaVersion: 2023, sourceType: 'script', globals: { ...globals.serviceworker, __FILES__: 'readonly' } },
    rules: RULES,
  },
  {
    files: ['tests/phone/*.js'],
    languageOptions: { ecmaVersion: 2023, sourceType: 'commonjs', globals: globals.node },
    rules: RULES,
  },
];
