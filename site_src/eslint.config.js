// Rules for the scripts of the pages. What is not defined, and what is of another type, is the type checker's business.
import js from "@eslint/js";

export default [
  js.configs.recommended,
  {
    rules: {
      "no-undef": "off",
      "complexity": ["error", 12],
      "curly": "error",
      "eqeqeq": "error",
      "max-lines": ["error", { max: 260, skipComments: true }],
      "no-eval": "error",
      "no-implied-eval": "error",
      "no-new-func": "error",
      "no-shadow": "error",
      "no-var": "error",
      "prefer-const": "error",
      "prefer-template": "error",
    },
  },
];
