"""Write benchjoin/drafting/writers/cairo_declared.py: what we call of the libraries cairo and FreeType.

Run it by hand when another function is called: ``python scripts/declare_cairo.py``. The declarations below are those of
cairo.h, cairo-pdf.h, cairo-ft.h and freetype.h, as far as they are used. cffi reads them here, and not each time that
the first PDF of a process is written: that takes as long as drawing half a binder.
"""

from __future__ import annotations

import tempfile
from pathlib import Path

import cffi

TARGET = Path(__file__).resolve().parent.parent / "benchjoin" / "drafting" / "writers" / "cairo_declared.py"
HEAD = '"""The functions of cairo and FreeType that are called, read by cffi. Made by scripts/declare_cairo.py."""\n\n'
DECLARED = """
typedef ... cairo_t;
typedef ... cairo_surface_t;
typedef ... cairo_font_face_t;
typedef ... cairo_scaled_font_t;
typedef ... cairo_font_options_t;
typedef struct { double xx, yx, xy, yy, x0, y0; } cairo_matrix_t;
typedef struct { double x_bearing, y_bearing, width, height, x_advance, y_advance; } cairo_text_extents_t;
typedef int (*cairo_write_func_t)(void *closure, const unsigned char *data, unsigned int length);

const char *cairo_status_to_string(int status);
cairo_surface_t *cairo_pdf_surface_create_for_stream(
    cairo_write_func_t write, void *closure, double width, double height);
void cairo_pdf_surface_restrict_to_version(cairo_surface_t *surface, int version);
void cairo_pdf_surface_set_size(cairo_surface_t *surface, double width, double height);
void cairo_surface_show_page(cairo_surface_t *surface);
void cairo_surface_finish(cairo_surface_t *surface);
int cairo_surface_status(cairo_surface_t *surface);
void cairo_surface_destroy(cairo_surface_t *surface);

cairo_t *cairo_create(cairo_surface_t *surface);
int cairo_status(cairo_t *page);
void cairo_destroy(cairo_t *page);
void cairo_save(cairo_t *page);
void cairo_restore(cairo_t *page);
void cairo_scale(cairo_t *page, double x, double y);
void cairo_translate(cairo_t *page, double x, double y);
void cairo_rotate(cairo_t *page, double angle);

void cairo_move_to(cairo_t *page, double x, double y);
void cairo_line_to(cairo_t *page, double x, double y);
void cairo_close_path(cairo_t *page);
void cairo_new_sub_path(cairo_t *page);
void cairo_arc(cairo_t *page, double x, double y, double radius, double from, double to);
void cairo_rectangle(cairo_t *page, double x, double y, double width, double height);

void cairo_clip(cairo_t *page);
void cairo_set_source_rgb(cairo_t *page, double red, double green, double blue);
void cairo_set_line_width(cairo_t *page, double width);
void cairo_set_dash(cairo_t *page, const double *dashes, int count, double offset);
void cairo_set_line_cap(cairo_t *page, int cap);
void cairo_set_line_join(cairo_t *page, int join);
void cairo_stroke(cairo_t *page);
void cairo_set_fill_rule(cairo_t *page, int rule);
void cairo_fill(cairo_t *page);

void cairo_set_font_face(cairo_t *page, cairo_font_face_t *font);
void cairo_set_font_matrix(cairo_t *page, const cairo_matrix_t *matrix);
void cairo_show_text(cairo_t *page, const char *text);
cairo_font_face_t *cairo_toy_font_face_create(const char *family, int slant, int weight);
cairo_font_face_t *cairo_ft_font_face_create_for_ft_face(void *face, int load_flags);
cairo_font_options_t *cairo_font_options_create(void);
void cairo_font_options_set_hint_style(cairo_font_options_t *options, int style);
void cairo_font_options_set_hint_metrics(cairo_font_options_t *options, int metrics);
void cairo_font_options_destroy(cairo_font_options_t *options);
cairo_scaled_font_t *cairo_scaled_font_create(
    cairo_font_face_t *font, const cairo_matrix_t *size, const cairo_matrix_t *page,
    const cairo_font_options_t *options);
void cairo_scaled_font_text_extents(cairo_scaled_font_t *font, const char *text, cairo_text_extents_t *extents);
void cairo_scaled_font_destroy(cairo_scaled_font_t *font);

int FT_Init_FreeType(void **library);
int FT_New_Memory_Face(void *library, const unsigned char *data, long size, long index, void **face);
"""


def declared() -> str:
    """The module as text."""
    ffi = cffi.FFI()
    ffi.cdef(DECLARED)
    ffi.set_source("benchjoin.drafting.writers.cairo_declared", None)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / TARGET.name
        ffi.emit_python_code(str(path))
        return HEAD + path.read_text(encoding="utf-8")


if __name__ == "__main__":
    TARGET.write_text(declared(), encoding="utf-8")
