using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>A sheet while it is being drawn: shapes are put down one after the other, and <see cref="Done"/> ends it.</summary>
public sealed class SheetCanvas
{
    private readonly ImmutableArray<Shape>.Builder shapes = ImmutableArray.CreateBuilder<Shape>();

    private string about = "";

    /// <summary>What all that is lettered from now on speaks of; empty for nothing.</summary>
    public void SpeakOf(string what) => about = what;

    /// <summary>What is drawn so far.</summary>
    public ImmutableArray<Shape> Shapes => shapes.ToImmutable();

    public IEnumerable<Lettering> Letterings => shapes.OfType<Lettering>();

    public void Line(Vec2 a, Vec2 b, Pen pen, string layer = Layers.Marks) =>
        shapes.Add(new Polyline(layer, pen, [a, b], false));

    public void Line(double x1, double y1, double x2, double y2, Pen pen) =>
        Line(new(x1, y1), new(x2, y2), pen);

    /// <summary>A chain of points; drops what has fewer than two.</summary>
    public void Open(IEnumerable<Vec2> points, Pen pen, string layer = Layers.Marks)
    {
        ImmutableArray<Vec2> all = [.. points];
        if (all.Length > 1)
        {
            shapes.Add(new Polyline(layer, pen, all, false));
        }
    }

    public void Closed(
        IEnumerable<Vec2> points,
        Pen pen,
        string layer = Layers.Marks,
        double? fill = null
    ) => shapes.Add(new Polyline(layer, pen, [.. points], true, fill));

    public void Rectangle(Box box, Pen pen, double? fill = null) =>
        Closed(
            [
                new(box.Left, box.Bottom),
                new(box.Right, box.Bottom),
                new(box.Right, box.Top),
                new(box.Left, box.Top),
            ],
            pen,
            Layers.Frame,
            fill
        );

    public void Dot(Vec2 at, double radius) =>
        shapes.Add(new CircleShape(Layers.Marks, Pens.None, at, radius, 0));

    public void Text(
        Vec2 at,
        string text,
        double height,
        Anchor anchor = Anchor.BaselineLeft,
        bool bold = false,
        double turn = 0
    )
    {
        if (text.Length > 0)
        {
            shapes.Add(
                new Lettering(Layers.Text, Pen.Thin, at, text, height, anchor, turn, bold)
                {
                    About = about,
                }
            );
        }
    }

    public void Text(
        double x,
        double y,
        string text,
        double height,
        Anchor anchor = Anchor.BaselineLeft,
        bool bold = false
    ) => Text(new Vec2(x, y), text, height, anchor, bold);

    /// <summary>Text in lines, the top of the first capitals at the given height; returns the top for what comes below.</summary>
    public double Paragraph(
        double left,
        double top,
        double width,
        string text,
        double height,
        bool bold = false
    )
    {
        foreach (string line in Letters.Wrap(text, height, width, bold))
        {
            Text(left, top - height, line, height, Anchor.BaselineLeft, bold);
            top -= height * Letters.Leading;
        }

        return top;
    }

    /// <summary>The first of some letterings that stands clear of all others, of dots and rings, and inside the box, drawn; false where none does.</summary>
    public bool TextAtFirst(IEnumerable<Lettering> places, Box within)
    {
        if (
            places.FirstOrDefault(p =>
                FreePlace.IsIn(within, p)
                && FreePlace.IsFree(p, Letterings)
                && FreePlace.IsFree(p, shapes.OfType<CircleShape>())
            )
            is not { } free
        )
        {
            return false;
        }

        shapes.Add(free);
        return true;
    }

    /// <summary>The sheet's lines on some layers broken around every lettering that they run through, as is done by hand.</summary>
    public void BreakAroundLetters(params string[] layers)
    {
        ImmutableArray<Shape> broken = BrokenLines.Of(Shapes, layers);
        shapes.Clear();
        shapes.AddRange(broken);
    }

    public void Add(IEnumerable<Shape> more) => shapes.AddRange(more);

    public Drawing Done(string title, double widthMm, double heightMm) =>
        new(title, widthMm, heightMm, shapes.ToImmutable());
}
