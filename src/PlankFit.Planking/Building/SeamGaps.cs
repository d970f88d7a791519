using System.Collections.Immutable;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Building;

/// <summary>
/// What straight edges would cost: where both neighbours are cut to the chords between their net edges' ends, the seam opens by the sum of what the two true
/// edges stand outside their chords (2 · K w L²/16 on a long plank), and clashes where that is negative.
/// </summary>
internal static class SeamGaps
{
    public static ImmutableArray<Plank> Judge(IReadOnlyList<BuiltPlank> row, double gapMm)
    {
        double[][] seams = new double[Math.Max(0, row.Count - 1)][];
        for (int i = 0; i < seams.Length; i++)
        {
            double[] a = row[i].After!.DeparturesFromChord(1),
                b = row[i + 1].Forward!.DeparturesFromChord(-1);
            seams[i] = [.. a.Zip(b, (x, y) => x + y)];
        }

        return
        [
            .. row.Select(
                (b, i) =>
                    One(b.Plank, i > 0 ? seams[i - 1] : [], i < seams.Length ? seams[i] : [], gapMm)
            ),
        ];
    }

    private static Plank One(Plank plank, double[] forward, double[] after, double gapMm)
    {
        double gap = Math.Max(0, forward.Concat(after).Append(0).Max()),
            overlap = Math.Max(0, -forward.Concat(after).Append(0).Min());
        PlankForm form = plank.Form;
        return plank with
        {
            Form = form with
            {
                Sizes = form.Sizes with
                {
                    Straight = new(gap, overlap, gap <= gapMm && overlap <= gapMm),
                },
                Shape = form.Shape with
                {
                    Forward = Word(plank.ForwardEdge, forward, gapMm),
                    After = Word(plank.AfterEdge, after, gapMm),
                },
            },
        };
    }

    private static PlankEdge Word(PlankEdge edge, double[] seam, double gapMm) =>
        edge.Exists && seam.All(d => Math.Abs(d) <= gapMm)
            ? edge with
            {
                ShapeWord = "straight",
            }
            : edge;
}
