"""The window: pages, panes and painting. The only Qt."""
