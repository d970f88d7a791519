using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Panels;

/// <summary>The bottom developed in full size, for a DXF or for tiling onto paper: one layer of the drawing to an operation.</summary>
public static class PanelFullSize
{
    private const double MarginMm = 20;
    private const double ChordMm = 0.002;
    private const double LetterMm = 20;

    /// <summary>
    /// Outline on "cut"; base line, stations and an arrow forward on "marks"; the seams of each plank layer on a layer of their own, "seams-1" and on;
    /// lettering on "text". The base line is the chord of the keel; its after end stands at (20, y) of the drawing.
    /// </summary>
    public static Drawing Of(Job job, PanelPlan plan)
    {
        FlatPanel flat = plan.Flat;
        var extent = Box.Around(flat.Outline);
        Vec2 shift = new(MarginMm - extent.Left, MarginMm - extent.Bottom);
        SheetCanvas pad = new();
        ImmutableArray<Vec2> Moved(IEnumerable<Vec2> line) => [.. line.Select(p => p + shift)];
        pad.Closed(Moved(flat.Outline), Pens.Cut, Layers.Cut);
        Vec2 after = flat.Map.At(flat.Patch.UTo, flat.Patch.Lower(flat.Patch.UTo)),
            forward = flat.Map.At(flat.Patch.UFrom, flat.Patch.Lower(flat.Patch.UFrom));
        pad.Open(Moved([after, forward]), Pens.Net);
        foreach (StationOnHull station in plan.Stations)
        {
            if (!flat.Patch.ClosesAt(station.U, 1))
            {
                ImmutableArray<Vec2> line = Moved(
                    FlatLines.Section(flat.Patch, flat.Map, station.U, ChordMm)
                );
                pad.Open(line, Pens.Station);
                pad.Text(line[0] + new Vec2(6, 10), PanelWords.Name(station), LetterMm);
            }
        }

        foreach (PanelSeams layer in plan.Layers)
        {
            foreach (PanelSeam seam in layer.Seams)
            {
                pad.Open(
                    Moved(FlatLines.Along(flat.Map, seam.Line)),
                    Pens.Seam,
                    FormattableString.Invariant($"seams-{layer.Layer}")
                );
            }
        }

        double middle = 0.5 * (flat.Patch.UFrom + flat.Patch.UTo);
        Vec2 centre = flat.Map.At(middle, flat.Patch.V(middle, 0.5)) + shift;
        ForwardArrow.Draw(pad, centre + new Vec2(0, 3.5 * LetterMm), new(1, 0), 200);
        string[] lines =
        [
            LetterWidths.Drawable(
                $"{PlanWords.Headed(job)}: the {plan.Panel.Name} laid flat, starboard, outer face up, arrow forward"
            ),
            PanelWords.Strain(plan),
        ];
        for (int k = 0; k < lines.Length; k++)
        {
            pad.Text(
                centre - new Vec2(0, 2 * LetterMm * k),
                lines[k],
                LetterMm,
                Anchor.BaselineCentre
            );
        }

        return pad.Done(
            $"{job.Name}: the {plan.Panel.Name} laid flat, full size",
            extent.Width + (2 * MarginMm),
            extent.Height + (2 * MarginMm)
        );
    }
}
