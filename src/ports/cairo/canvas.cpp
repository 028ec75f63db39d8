#include "ports/cairo/canvas.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include <utility>

#include "base/fault.h"
#include "base/require.h"
#include "ports/cairo/degree_signs.h"
#include "ports/cairo/svg_names.h"
#include "ports/cairo/tag_attribute.h"

namespace rimehaul::ports::cairo {

namespace {

struct Release {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(PangoAttrList* attributes) const { pango_attr_list_unref(attributes); }
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
template <typename Handle>
using Owned = std::unique_ptr<Handle, Release>;

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

cairo_surface_t* surface_of(Form form, PageSize size, std::string& bytes) {
  return form == Form::pdf
             ? cairo_pdf_surface_create_for_stream(keep, &bytes, size.width_pt, size.height_pt)
             : cairo_svg_surface_create_for_stream(keep, &bytes, size.width_pt, size.height_pt);
}

/// B612 was drawn to be read fast in bad light; what it lacks comes from DejaVu.
const char* family_of(Face face) {
  return face == Face::mono ? "B612 Mono, DejaVu Sans Mono" : "B612, DejaVu Sans";
}

/// The one structure element at the root, around all others.
constexpr const char* kWhole = "Document";

PangoAlignment alignment_of(Align align) {
  if (align == Align::centre) {
    return PANGO_ALIGN_CENTER;
  }
  return align == Align::left ? PANGO_ALIGN_LEFT : PANGO_ALIGN_RIGHT;
}

/// Width and height that laid out text takes.
PageSize size_of(const Owned<PangoLayout>& layout) {
  int width = 0;
  int height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  return {static_cast<double>(width) / PANGO_SCALE, static_cast<double>(height) / PANGO_SCALE};
}

}  // namespace

struct Canvas::Handles {
  std::string bytes;
  Owned<cairo_surface_t> surface;
  Owned<cairo_t> context;

  [[nodiscard]] cairo_t* draw() const { return context.get(); }

  void ink(Colour colour) const {
    cairo_set_source_rgb(draw(), colour.red, colour.green, colour.blue);
  }

  void pen(const Stroke& stroke) const {
    ink(stroke.colour);
    cairo_set_line_width(draw(), stroke.width_pt);
    cairo_set_dash(draw(), stroke.dashes_pt.data(), static_cast<int>(stroke.dashes_pt.size()), 0.0);
    cairo_set_line_join(draw(), CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(draw(), CAIRO_LINE_CAP_BUTT);
  }

  void trace(const std::vector<Spot>& spots) const {
    cairo_new_path(draw());
    for (const Spot& spot : spots) {
      cairo_line_to(draw(), spot.x_pt, spot.y_pt);
    }
  }

  void fill_and_edge(Colour fill, const Stroke& edge) const {
    ink(fill);
    cairo_fill_preserve(draw());
    if (edge.width_pt > 0.0) {
      pen(edge);
      cairo_stroke(draw());
    }
    cairo_new_path(draw());
  }

  [[nodiscard]] Owned<PangoLayout> layout(std::string_view text, const Lettering& lettering) const {
    Owned<PangoLayout> layout{pango_cairo_create_layout(draw())};
    const Owned<PangoFontDescription> font{pango_font_description_new()};
    pango_font_description_set_family(font.get(), family_of(lettering.face));
    pango_font_description_set_weight(
        font.get(), lettering.weight == Weight::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font.get(), lettering.size_pt * PANGO_SCALE);
    pango_layout_set_font_description(layout.get(), font.get());
    pango_layout_set_alignment(layout.get(), alignment_of(lettering.align));
    const std::string shown = with_degree_signs(std::string{text});
    pango_layout_set_text(layout.get(), shown.data(), static_cast<int>(shown.size()));
    return layout;
  }

  [[nodiscard]] Owned<PangoLayout> layout(const Paragraph& paragraph) const {
    Owned<PangoLayout> folded = layout(paragraph.text, paragraph.lettering);
    // A digest that folds must not gain a hyphen.
    const Owned<PangoAttrList> attributes{pango_attr_list_new()};
    pango_attr_list_insert(attributes.get(), pango_attr_insert_hyphens_new(FALSE));
    pango_layout_set_attributes(folded.get(), attributes.get());
    pango_layout_set_wrap(folded.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(folded.get(), static_cast<int>(paragraph.width_pt * PANGO_SCALE));
    return folded;
  }
};

Canvas::Canvas(Form form, PageSize size, const DocumentFacts& facts)
    : handles_{std::make_unique<Handles>()}, form_{form}, size_{size} {
  handles_->surface.reset(surface_of(form, size, handles_->bytes));
  handles_->context.reset(cairo_create(handles_->surface.get()));
  if (form == Form::pdf) {
    cairo_pdf_surface_set_metadata(handles_->surface.get(), CAIRO_PDF_METADATA_TITLE,
                                   facts.title.c_str());
    cairo_pdf_surface_set_metadata(handles_->surface.get(), CAIRO_PDF_METADATA_CREATE_DATE,
                                   facts.made.c_str());
    cairo_pdf_surface_set_metadata(handles_->surface.get(), CAIRO_PDF_METADATA_MOD_DATE,
                                   facts.made.c_str());
    cairo_tag_begin(handles_->draw(), kWhole, "");
  }
  // Letters keep their true widths, so that a page breaks alike on every screen and printer.
  const Owned<cairo_font_options_t> options{cairo_font_options_create()};
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_set_font_options(handles_->draw(), options.get());
}

Canvas::~Canvas() = default;

void Canvas::next_page() {
  base::require(form_ == Form::pdf, "only a PDF has more than one page");
  cairo_show_page(handles_->draw());
}

double Canvas::height_of(const Paragraph& paragraph) const {
  return size_of(handles_->layout(paragraph)).height_pt;
}

double Canvas::width_of(std::string_view text, const Lettering& lettering) const {
  return size_of(handles_->layout(text, lettering)).width_pt;
}

bool Canvas::has_letters(std::string_view text) const {
  return pango_layout_get_unknown_glyphs_count(handles_->layout(text, {}).get()) == 0;
}

double Canvas::write(Spot corner, const Paragraph& paragraph) {
  const auto layout = handles_->layout(paragraph);
  handles_->ink(paragraph.lettering.colour);
  cairo_move_to(handles_->draw(), corner.x_pt, corner.y_pt);
  pango_cairo_show_layout(handles_->draw(), layout.get());
  cairo_new_path(handles_->draw());
  return height_of(paragraph);
}

void Canvas::label(Spot middle, std::string_view text, const Lettering& lettering) {
  const auto layout = handles_->layout(text, lettering);
  const PageSize size = size_of(layout);
  const Spot corner{middle.x_pt - size.width_pt / 2.0, middle.y_pt - size.height_pt / 2.0};
  cairo_move_to(handles_->draw(), corner.x_pt, corner.y_pt);
  pango_cairo_layout_path(handles_->draw(), layout.get());
  handles_->pen({.width_pt = 2.4, .colour = kPaper});
  cairo_stroke(handles_->draw());
  handles_->ink(lettering.colour);
  cairo_move_to(handles_->draw(), corner.x_pt, corner.y_pt);
  pango_cairo_show_layout(handles_->draw(), layout.get());
  cairo_new_path(handles_->draw());
}

void Canvas::line(const std::vector<Spot>& spots, const Stroke& stroke) {
  handles_->trace(spots);
  handles_->pen(stroke);
  cairo_stroke(handles_->draw());
}

void Canvas::area(const std::vector<Spot>& corners, Colour fill, const Stroke& edge) {
  handles_->trace(corners);
  cairo_close_path(handles_->draw());
  handles_->fill_and_edge(fill, edge);
}

void Canvas::box(const Box& box, Colour fill, const Stroke& edge) {
  cairo_new_path(handles_->draw());
  cairo_rectangle(handles_->draw(), box.left_pt, box.top_pt, box.width_pt, box.height_pt);
  handles_->fill_and_edge(fill, edge);
}

void Canvas::disc(Spot middle, double radius_pt, Colour fill, const Stroke& edge) {
  constexpr double kFullTurn = 6.283185307179586;
  cairo_new_path(handles_->draw());
  cairo_arc(handles_->draw(), middle.x_pt, middle.y_pt, radius_pt, 0.0, kFullTurn);
  cairo_close_path(handles_->draw());
  handles_->fill_and_edge(fill, edge);
}

void Canvas::picture(const GreyPicture& picture, const Box& box) {
  const Owned<cairo_surface_t> image{
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.columns, picture.rows)};
  unsigned char* row = cairo_image_surface_get_data(image.get());
  const int stride = cairo_image_surface_get_stride(image.get());
  const auto columns = static_cast<std::size_t>(picture.columns);
  base::require(picture.greys.size() == columns * static_cast<std::size_t>(picture.rows),
                "a picture has one grey for each of its places");
  for (std::size_t i = 0; i < picture.greys.size(); ++i) {
    if (i > 0 && i % columns == 0) {
      row += stride;
    }
    unsigned char* place = row + 4 * (i % columns);
    place[0] = place[1] = place[2] = picture.greys[i];
  }
  cairo_surface_mark_dirty(image.get());
  cairo_save(handles_->draw());
  cairo_translate(handles_->draw(), box.left_pt, box.top_pt);
  cairo_scale(handles_->draw(), box.width_pt / picture.columns, box.height_pt / picture.rows);
  cairo_set_source_surface(handles_->draw(), image.get(), 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(handles_->draw()), CAIRO_FILTER_BILINEAR);
  cairo_rectangle(handles_->draw(), 0.0, 0.0, picture.columns, picture.rows);
  cairo_fill(handles_->draw());
  cairo_restore(handles_->draw());
}

card::Printed Canvas::finish() {
  if (form_ == Form::pdf) {
    cairo_tag_end(handles_->draw(), kWhole);
  }
  cairo_show_page(handles_->draw());
  cairo_surface_finish(handles_->surface.get());
  for (const cairo_status_t status :
       {cairo_status(handles_->draw()), cairo_surface_status(handles_->surface.get())}) {
    if (status != CAIRO_STATUS_SUCCESS) {
      throw base::OurFault{std::string{"drawing failed: "} + cairo_status_to_string(status)};
    }
  }
  if (form_ == Form::svg) {
    handles_->bytes = with_own_numbers(handles_->bytes);
  }
  return {std::move(handles_->bytes), std::move(figure_words_)};
}

Canvas::Clip::Clip(Canvas& canvas, const Box& box) : canvas_{&canvas} {
  cairo_save(canvas_->handles_->draw());
  cairo_new_path(canvas_->handles_->draw());
  cairo_rectangle(canvas_->handles_->draw(), box.left_pt, box.top_pt, box.width_pt, box.height_pt);
  cairo_clip(canvas_->handles_->draw());
}

Canvas::Clip::~Clip() {
  cairo_restore(canvas_->handles_->draw());
}

Canvas::Tag::Tag(Canvas& canvas, const char* name) : Tag{canvas, name, ""} {}

Canvas::Tag::Tag(Canvas& canvas, const char* name, const std::string& attributes)
    : canvas_{&canvas}, name_{name} {
  if (name_ != nullptr) {
    cairo_tag_begin(canvas_->handles_->draw(), name_, attributes.c_str());
  }
}

Canvas::Tag Canvas::Tag::figure(Canvas& canvas, std::string words) {
  canvas.figure_words_.push_back(std::move(words));
  return {canvas, "Figure"};
}

Canvas::Tag Canvas::Tag::place(Canvas& canvas, const std::string& name) {
  return {canvas, name.empty() ? nullptr : CAIRO_TAG_DEST, tag_attribute("name", name)};
}

Canvas::Tag Canvas::Tag::link(Canvas& canvas, const std::string& name) {
  return {canvas, name.empty() ? nullptr : CAIRO_TAG_LINK, tag_attribute("dest", name)};
}

Canvas::Tag::~Tag() {
  if (name_ != nullptr) {
    cairo_tag_end(canvas_->handles_->draw(), name_);
  }
}

}  // namespace rimehaul::ports::cairo
