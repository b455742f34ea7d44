"""One module per topic or small family of topics: pages of coaching that compute."""
