using System.Collections.Immutable;
using PlankFit.Export.Framing;
using PlankFit.Export.Joints;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Patterns;

/// <summary>
/// A plank in true size for a cutting machine, outer face up. One operation a layer: the outline to saw, the net outline, pencil marks (where each face ends,
/// witness ticks, the arrow forward), text. Coordinates are the plank's own (s, n), mm, so that they can be held against planking.json.
/// </summary>
public static class CuttingPattern
{
    private const double TickMm = 12;
    private const double TextMm = 8;
    private const double TickTextMm = 4;
    private const double BesideMm = 20;

    /// <summary>One plank, in its own coordinates.</summary>
    public static Drawing Of(PlanShown shown, Plank plank)
    {
        var box = Box.Around(plank.FlatCut);
        return new(
            $"{shown.Plan.Job.Name} {plank.Id}",
            box.Width,
            box.Height,
            Shapes(shown, plank, new Vec2(0, 0))
        );
    }

    /// <summary>All planks of a layer and side one above the other, none touching, each with its id; the first at the top.</summary>
    /// <param name="patterns">Of the layer's planks on that side, in their order, as <see cref="Of"/> draws them: worked out once for both kinds of file.</param>
    public static Drawing Layer(
        BottomPlan plan,
        PlankLayerPlan layer,
        Side side,
        IReadOnlyList<Drawing> patterns
    )
    {
        ImmutableArray<Shape>.Builder shapes = ImmutableArray.CreateBuilder<Shape>();
        double top = 0,
            right = 0;
        foreach ((Plank plank, Drawing pattern) in layer.On(side).Zip(patterns))
        {
            var box = Box.Around(plank.FlatCut);
            var shift = new Vec2(-box.Left, top - box.Top);
            shapes.AddRange(pattern.Shapes.Select(s => s.MovedBy(shift)));
            top -= box.Height + BesideMm;
            right = Math.Max(right, box.Width);
        }

        return new(
            $"{plan.Job.Name} layer {layer.Code} {PlankWords.Of(side)}",
            right,
            -top,
            shapes.ToImmutable()
        );
    }

    private static ImmutableArray<Shape> Shapes(PlanShown shown, Plank plank, Vec2 shift)
    {
        BottomPlan plan = shown.Plan;
        ImmutableArray<Shape> shapes = [.. Unnamed(shown, plank, shift)];
        shapes = [.. shapes, .. shown.Added.SelectMany(a => a.Holes(plank, shift))];
        shapes = [.. shapes, .. FramingMarks.Of(plan, plank, shift, shapes)];
        return [.. shapes, .. EndLineNames.Of(plank, shift, shapes)];
    }

    private static IEnumerable<Shape> Unnamed(PlanShown shown, Plank plank, Vec2 shift)
    {
        BottomPlan plan = shown.Plan;
        ImmutableArray<Vec2> Moved(IEnumerable<Vec2> points) => [.. points.Select(p => p + shift)];
        yield return new Polyline(Layers.Cut, Pens.Cut, Moved(plank.FlatCut), true);
        yield return new Polyline(Layers.Net, Pens.Net, Moved(plank.FlatNet), true);
        foreach (PlankEnd end in plank.Ends.Where(e => e.BevelDegrees != 0))
        {
            foreach (ImmutableArray<Vec2> line in new[] { end.OuterLine, end.InnerLine })
            {
                if (line.Length > 1 && line[0].ChordTo(line[^1]) > 0.01)
                {
                    yield return new Polyline(Layers.Marks, Pens.Outer, Moved(line), false);
                }
            }
        }

        foreach (Shape joint in JointMarks.Of(plan, plank, shift))
        {
            yield return joint;
        }

        foreach (PlankMark mark in plank.Marks)
        {
            yield return new Polyline(
                Layers.Marks,
                Pens.Tick,
                Moved([mark.At, mark.At + (TickMm * mark.Inward)]),
                false
            );
            yield return new Lettering(
                Layers.Text,
                Pen.Thin,
                JointMarks.Clear(plan, plank, mark.At + ((TickMm + 3) * mark.Inward)) + shift,
                mark.Label,
                TickTextMm,
                Anchor.MiddleCentre
            );
        }

        foreach (Shape shape in Names(shown, plank, shift))
        {
            yield return shape;
        }
    }

    /// <summary>The plank's name at its middle, the arrow forward beside it; small pieces are lettered smaller.</summary>
    private static IEnumerable<Shape> Names(PlanShown shown, Plank plank, Vec2 shift)
    {
        BottomPlan plan = shown.Plan;
        // Where a plank is in pieces its longest is lettered as the plank would be, so that no joint runs through the words.
        PlankPiece? piece = JointMarks.Longest(plan, plank);
        Vec2 middle = Interior.DeepestPoint(piece?.Net ?? plank.FlatNet, out double room);
        double height = Math.Clamp(room / 4, 1.5, TextMm);
        string face = plank.IsRefused
            ? RefusedBend.Mark
            : $"outer face up, rev {plan.Job.Revision}";
        middle = ClearPlace.Of(
            plank,
            shown.Added,
            middle,
            new(LetterWidths.TextWidth(face, height / 2) / 2, 1.5 * height)
        );
        yield return new Lettering(
            Layers.Text,
            Pen.Thin,
            middle + shift + new Vec2(0, 0.4 * height),
            (piece?.Id ?? PieceId.Whole(plank.Id)).ToString(),
            height,
            Anchor.BaselineCentre,
            0,
            true
        );
        if (LetterWidths.TextWidth(face, height / 2) < 1.6 * room || room > 40)
        {
            yield return new Lettering(
                Layers.Text,
                Pen.Thin,
                middle + shift - new Vec2(0, 0.6 * height),
                face,
                height / 2,
                Anchor.BaselineCentre
            );
        }

        // Whose plank it is, where there is room for it clear of the arrow.
        PlankLayerPlan layer = plan.LayerOf(plank.Id);
        string whose = $"{plan.Job.Name}: {PlankWords.Of(plank.Side)}, {SheetWords.Of(layer)}";
        double width = LetterWidths.TextWidth(whose, height / 2);
        if (room > 40 && width < 0.4 * (piece?.LengthMm ?? plank.NetLengthMm))
        {
            yield return new Lettering(
                Layers.Text,
                Pen.Thin,
                middle + shift - new Vec2(0, 1.6 * height),
                whose,
                height / 2,
                Anchor.BaselineCentre
            );
        }

        Vec2 forward = ForwardArrow.OnFlat(plank);
        double length = Math.Min(60, 0.9 * room);
        Vec2 tail =
                middle
                + shift
                - (0.5 * length * forward)
                + new Vec2(
                    room > 40 ? -Math.Max(90, (width / 2) + 40) : 0,
                    room > 40 ? 0 : -2.2 * height
                ),
            tip = tail + (length * forward);
        yield return new Polyline(Layers.Marks, Pens.Tick, [tail, tip], false);
        Vec2 back = tip - (0.25 * length * forward);
        yield return new Polyline(
            Layers.Marks,
            Pens.Tick,
            [back + (0.12 * length * forward.Left()), tip, back - (0.12 * length * forward.Left())],
            false
        );
    }
}
