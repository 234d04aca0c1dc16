"""From written pages to a published site: MkDocs, policies, what a phone keeps, the swap."""
