"""Reads finished PDF as one who checks paper before it goes to the bench, and tells what is wrong with a page.

`page` finds what is drawn and written, `writing` puts letters together to lines of writing, `rules` are functions from
a page to its faults, `checking` lays all of them on a file. Nothing here knows who drew the pages, or how: what stands
in the file is all there is. Places are mm from the lower left corner of a page.
"""
