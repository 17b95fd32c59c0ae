/** What each version derived from the same inputs, oldest first: lines are added, never changed. */
export const DERIVED = {
  engine: [
    { version: "1.2.0", digest: "sha256:30cf8157aaaa4ca40b6e5e5354026164b0ba34e6d39c3e98e6adb2d02166e45f" },
    { version: "1.3.0", digest: "sha256:873c4128997af5b1daef0176cdc11e49fae33472a23d8488e96d2bba73465c82" },
    { version: "1.4.0", digest: "sha256:f9c8bd374e379989c1468bdfa84631621fb2d5c96421f74d094d4d6cbe28a260" },
    { version: "1.5.0", digest: "sha256:f9c8bd374e379989c1468bdfa84631621fb2d5c96421f74d094d4d6cbe28a260" },
    { version: "1.6.0", digest: "sha256:db4da0f00598b5e9e8bddc5af282f629ad1c6a8a6b91097d033ca8682790a0b6" },
    { version: "1.7.0", digest: "sha256:d145ba24fec290222d6aeaaa090c3f2ff8c07012b72683963c6b9e93223a0b06" },
    { version: "1.8.0", digest: "sha256:4ed8df2f85d4756469f8ecc7ee51b825a23ce8570da57b85568bae499e4cd257" },
  ],
  index: [
    {
      version: "1 on 1.2.0",
      digest: "sha256:7894a390458704d57c5c0af4e3c21e1d54494d9442d9e27b95ed931305fa6de7",
    },
    {
      version: "1 on 1.3.0",
      digest: "sha256:536fd9fad11228e4dfee6530632e959917910391acd74818cf8ca54389b4bda7",
    },
    {
      version: "1 on 1.4.0",
      digest: "sha256:536fd9fad11228e4dfee6530632e959917910391acd74818cf8ca54389b4bda7",
    },
    {
      version: "1 on 1.5.0",
      digest: "sha256:536fd9fad11228e4dfee6530632e959917910391acd74818cf8ca54389b4bda7",
    },
    {
      version: "1 on 1.6.0",
      digest: "sha256:312fad1b07e4b96d53a8c733136cef22be728f2cd1e8c082f91aafb319ae0e1d",
    },
    {
      version: "1 on 1.7.0",
      digest: "sha256:312fad1b07e4b96d53a8c733136cef22be728f2cd1e8c082f91aafb319ae0e1d",
    },
    {
      version: "2 on 1.8.0",
      digest: "sha256:d5e44063757952479bcc450a31db9303d7c07f726c065801aee820d658f94794",
    },
  ],
};
