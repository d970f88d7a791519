using System.Collections.Immutable;
using PlankFit.Draughting.Fonts;
using PlankFit.Geometry.Primitives;
using SkiaSharp;

namespace PlankFit.Draughting.Skia;

/// <summary>Paints drawings on a canvas whose unit has been made a millimetre, y down from the sheet's top: the one painter for PDF and PNG.</summary>
internal sealed class Painter(Typefaces typefaces) : IDisposable
{
    private const double DashSagMm = 0.01;

    private readonly SKPaint stroke = new()
    {
        Style = SKPaintStyle.Stroke,
        IsAntialias = true,
        StrokeJoin = SKStrokeJoin.Round,
    };

    private readonly SKPaint fill = new() { Style = SKPaintStyle.Fill, IsAntialias = true };
    private readonly Dictionary<(double HeightMm, bool Bold), SKFont> fonts = [];

    /// <exception cref="ArgumentException">A letter is missing from the typeface, or the drawing cannot be drawn.</exception>
    public void Paint(SKCanvas canvas, Drawing drawing)
    {
        DrawingFaults.Refuse(drawing);
        foreach (Shape shape in drawing.Shapes)
        {
            switch (shape)
            {
                case Polyline line:
                    Paint(canvas, drawing.HeightMm, line);
                    break;
                case CircleShape circle:
                    Paint(canvas, drawing.HeightMm, circle);
                    break;
                case Lettering text:
                    Paint(canvas, drawing, text);
                    break;
                default:
                    throw new NotSupportedException($"No way to paint a {shape.GetType().Name}.");
            }
        }
    }

    public void Dispose()
    {
        foreach (SKFont font in fonts.Values)
        {
            font.Dispose();
        }

        stroke.Dispose();
        fill.Dispose();
    }

    private void Paint(SKCanvas canvas, double heightMm, Polyline line)
    {
        using SKPath? path =
            line.Fill is null && line.Pen.IsDashed
                ? null
                : Path([line.Points], line.Closed, heightMm);
        if (line.Fill is { } grey)
        {
            canvas.DrawPath(path!, Filled(grey));
        }

        if (line.Pen.WidthMm > 0)
        {
            Stroke(canvas, path, line.Points, line.Closed, heightMm, line.Pen);
        }
    }

    private void Paint(SKCanvas canvas, double heightMm, CircleShape circle)
    {
        SKPoint centre = Point(circle.Centre, heightMm);
        float radius = (float)circle.RadiusMm;
        if (circle.Fill is { } grey)
        {
            canvas.DrawCircle(centre, radius, Filled(grey));
        }

        if (circle.Pen.IsDashed && circle.Pen.WidthMm > 0)
        {
            ImmutableArray<Vec2> round = Circles.Polygon(circle.Centre, circle.RadiusMm, DashSagMm);
            Stroke(canvas, null, round, true, heightMm, circle.Pen);
        }
        else if (circle.Pen.WidthMm > 0)
        {
            canvas.DrawCircle(centre, radius, Stroked(circle.Pen));
        }
    }

    private void Stroke(
        SKCanvas canvas,
        SKPath? whole,
        ImmutableArray<Vec2> points,
        bool closed,
        double heightMm,
        Pen pen
    )
    {
        if (!pen.IsDashed)
        {
            canvas.DrawPath(whole!, Stroked(pen));
            return;
        }

        using SKPath dashes = Path(Dashes.Cut(points, closed, pen.DashesMm), false, heightMm);
        canvas.DrawPath(dashes, Stroked(pen));
    }

    private void Paint(SKCanvas canvas, Drawing drawing, Lettering text)
    {
        if (text.Text.Length == 0)
        {
            return;
        }

        if (LetterWidths.FirstMissing(text.Text, text.Bold) is { } sign)
        {
            throw new ArgumentException(
                $"Drawing \"{drawing.Title}\": the lettering has no sign \"{sign}\" (U+{sign.Value:X4}), wanted in \"{text.Text}\"."
            );
        }

        SKPoint at = Point(text.LeftEnd(), drawing.HeightMm);
        SKPaint paint = Filled(text.Pen.Grey);
        using SKTextBlob run = GlyphRuns.Of(text.Text, Font(text), InterFonts.Of(text.Bold));
        if (text.TurnDegrees == 0)
        {
            canvas.DrawText(run, at.X, at.Y, paint);
            return;
        }

        canvas.Save();
        canvas.Translate(at.X, at.Y);
        canvas.RotateDegrees((float)-text.TurnDegrees);
        canvas.DrawText(run, 0, 0, paint);
        canvas.Restore();
    }

    private SKFont Font(Lettering text)
    {
        (double HeightMm, bool Bold) key = (text.HeightMm, text.Bold);
        if (!fonts.TryGetValue(key, out SKFont? font))
        {
            double size = InterFonts.Of(text.Bold).SizeFor(text.HeightMm);
            font = new SKFont(typefaces.Of(text.Bold), (float)size)
            {
                Subpixel = true,
                LinearMetrics = true,
                Hinting = SKFontHinting.None,
                Edging = SKFontEdging.Antialias,
            };
            fonts[key] = font;
        }

        return font;
    }

    private SKPaint Stroked(Pen pen)
    {
        stroke.Color = Grey(pen.Grey);
        stroke.StrokeWidth = (float)pen.WidthMm;
        return stroke;
    }

    private SKPaint Filled(double grey)
    {
        fill.Color = Grey(grey);
        return fill;
    }

    private static SKColor Grey(double grey)
    {
        byte level = (byte)Math.Round(255 * grey);
        return new SKColor(level, level, level);
    }

    private static SKPoint Point(Vec2 point, double heightMm) =>
        new((float)point.X, (float)(heightMm - point.Y));

    private static SKPath Path<TLine>(IReadOnlyList<TLine> lines, bool closed, double heightMm)
        where TLine : IReadOnlyList<Vec2>
    {
        using var path = new SKPathBuilder();
        foreach (TLine line in lines)
        {
            path.MoveTo(Point(line[0], heightMm));
            for (int i = 1; i < line.Count; i++)
            {
                path.LineTo(Point(line[i], heightMm));
            }

            if (closed)
            {
                path.Close();
            }
        }

        return path.Detach();
    }
}
