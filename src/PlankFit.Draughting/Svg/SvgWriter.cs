using System.Text;
using PlankFit.Draughting.Fonts;
using PlankFit.Draughting.Text;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Svg;

/// <summary>
/// A drawing as SVG 1.1 in true size: width and height in millimetres, one user unit a millimetre, lines and dashes as lines and dashes, text as text.
/// The same drawing gives the same bytes.
/// </summary>
public static class SvgWriter
{
    private const int Decimals = 3;

    /// <exception cref="ArgumentException">The drawing cannot be drawn, see <see cref="DrawingFaults.Refuse"/>.</exception>
    public static void Write(Stream stream, Drawing drawing)
    {
        DrawingFaults.Refuse(drawing);
        using var svg = new Utf8Text(64 * 1024);
        Head(svg, drawing);
        string? layer = null;
        foreach (Shape shape in drawing.Shapes)
        {
            if (shape.Layer != layer)
            {
                svg.Add(layer is null ? ""u8 : "</g>\n"u8);
                svg.Add("<g class=\""u8);
                AddEscaped(svg, shape.Layer);
                svg.Add("\">\n"u8);
                layer = shape.Layer;
            }

            Add(svg, drawing, shape);
        }

        svg.Add(layer is null ? "</svg>\n"u8 : "</g>\n</svg>\n"u8);
        stream.Write(svg.Written.Span);
    }

    private static void Head(Utf8Text svg, Drawing drawing)
    {
        svg.Add("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"u8);
        svg.Add("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\""u8);
        svg.Add(drawing.WidthMm, Decimals).Add("mm\" height=\""u8).Add(drawing.HeightMm, Decimals);
        svg.Add("mm\" viewBox=\"0 0 "u8).Add(drawing.WidthMm, Decimals).Add(" "u8);
        svg.Add(drawing.HeightMm, Decimals);
        svg.Add("\" fill=\"none\" stroke-linejoin=\"round\""u8);
        svg.Add(" font-family=\"Inter, Helvetica, Arial, sans-serif\">\n<title>"u8);
        AddEscaped(svg, drawing.Title);
        svg.Add("</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n"u8);
    }

    private static void Add(Utf8Text svg, Drawing drawing, Shape shape)
    {
        switch (shape)
        {
            case Polyline line:
                svg.Add("<path d=\"M"u8);
                for (int i = 0; i < line.Points.Length; i++)
                {
                    svg.Add(i == 0 ? ""u8 : " "u8);
                    AddPoint(svg, drawing, line.Points[i], " "u8);
                }

                svg.Add(line.Closed ? "Z\""u8 : "\""u8);
                AddPen(svg, line.Pen, line.Fill);
                svg.Add("/>\n"u8);
                break;
            case CircleShape circle:
                svg.Add("<circle cx=\""u8);
                AddPoint(svg, drawing, circle.Centre, "\" cy=\""u8);
                svg.Add("\" r=\""u8).Add(circle.RadiusMm, Decimals).Add("\""u8);
                AddPen(svg, circle.Pen, circle.Fill);
                svg.Add("/>\n"u8);
                break;
            case Lettering text:
                Add(svg, drawing, text);
                break;
            default:
                throw new NotSupportedException($"SVG: no way to write a {shape.GetType().Name}.");
        }
    }

    private static void Add(Utf8Text svg, Drawing drawing, Lettering text)
    {
        if (text.Text.Length == 0)
        {
            return;
        }

        // The width is stated, so that a machine without the typeface keeps the sheet's layout.
        FontFile font = InterFonts.Of(text.Bold);
        double width = LetterWidths.TextWidth(text.Text, text.HeightMm, text.Bold);
        svg.Add("<text x=\""u8);
        AddPoint(svg, drawing, text.Baseline(), "\" y=\""u8);
        svg.Add("\" font-size=\""u8).Add(font.SizeFor(text.HeightMm), Decimals);
        svg.Add("\" textLength=\""u8).Add(width, Decimals);
        svg.Add("\" lengthAdjust=\"spacingAndGlyphs\""u8);
        svg.Add(text.Bold ? " font-weight=\"600\""u8 : ""u8);
        svg.Add(
            text.Anchor switch
            {
                Anchor.BaselineCentre or Anchor.MiddleCentre => " text-anchor=\"middle\""u8,
                Anchor.BaselineRight or Anchor.MiddleRight => " text-anchor=\"end\""u8,
                _ => ""u8,
            }
        );
        if (text.TurnDegrees != 0)
        {
            svg.Add(" transform=\"rotate("u8).Add(-text.TurnDegrees, Decimals).Add(" "u8);
            AddPoint(svg, drawing, text.Baseline(), " "u8);
            svg.Add(")\""u8);
        }

        if (text.About.Length > 0)
        {
            svg.Add(" data-about=\""u8);
            AddEscaped(svg, text.About);
            svg.Add("\""u8);
        }

        svg.Add(" fill=\""u8);
        AddGrey(svg, text.Pen.Grey);
        svg.Add("\">"u8);
        AddEscaped(svg, text.Text);
        svg.Add("</text>\n"u8);
    }

    private static void AddPoint(
        Utf8Text svg,
        Drawing drawing,
        Vec2 point,
        ReadOnlySpan<byte> between
    ) => svg.Add(point.X, Decimals).Add(between).Add(drawing.HeightMm - point.Y, Decimals);

    private static void AddPen(Utf8Text svg, Pen pen, double? fill)
    {
        if (fill is { } grey)
        {
            svg.Add(" fill=\""u8);
            AddGrey(svg, grey);
            svg.Add("\""u8);
        }

        if (pen.WidthMm == 0)
        {
            return;
        }

        svg.Add(" stroke=\""u8);
        AddGrey(svg, pen.Grey);
        svg.Add("\" stroke-width=\""u8).Add(pen.WidthMm, Decimals).Add("\""u8);
        if (pen.IsDashed)
        {
            svg.Add(" stroke-dasharray=\""u8);
            for (int i = 0; i < pen.DashesMm.Length; i++)
            {
                svg.Add(i == 0 ? ""u8 : " "u8).Add(pen.DashesMm[i], Decimals);
            }

            svg.Add("\""u8);
        }
    }

    private static void AddGrey(Utf8Text svg, double grey)
    {
        ReadOnlySpan<byte> hex = "0123456789abcdef"u8;
        int level = (int)Math.Round(255 * grey);
        ReadOnlySpan<byte> pair = [hex[level >> 4], hex[level & 15]];
        svg.Add("#"u8).Add(pair).Add(pair).Add(pair);
    }

    /// <summary>With the signs that XML reserves written as it asks, and those that it forbids left out.</summary>
    private static void AddEscaped(Utf8Text svg, string text)
    {
        Span<char> chars = stackalloc char[2];
        foreach (Rune sign in text.EnumerateRunes())
        {
            switch (sign.Value)
            {
                case '&':
                    svg.Add("&amp;"u8);
                    break;
                case '<':
                    svg.Add("&lt;"u8);
                    break;
                case '>':
                    svg.Add("&gt;"u8);
                    break;
                case '"':
                    svg.Add("&quot;"u8);
                    break;
                case < 0x20 or 0xFFFE or 0xFFFF:
                    break;
                default:
                    svg.Add(chars[..sign.EncodeToUtf16(chars)]);
                    break;
            }
        }
    }
}
