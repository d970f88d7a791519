using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>
/// What a tape should read at given places for errors p of the table, starboard's cells first, then port's; and the slopes of that, by central differences on the loft.
/// </summary>
/// <param name="job">With the table as drawn.</param>
/// <param name="seams">Of the edges that are taped, those whose marks are known; their faces from the table's surface, mm.</param>
public sealed class Expectations(
    PlankingJob job,
    TableCells cells,
    ImmutableArray<TapePlace> places,
    IReadOnlyDictionary<TapedEdge, TapedSeamPlace> seams
)
{
    /// <summary>Half of what a cell is moved by for a slope, mm: readings are smooth, and a tape held down is followed to 0.0001 mm.</summary>
    private const double StepMm = 0.25;

    private readonly Lazy<ImmutableDictionary<TapedEdge, double?>> drawn = new(() =>
    {
        var loft = new TapedLoft(job);
        return seams.ToImmutableDictionary(
            s => s.Key,
            s => loft.Between(s.Value.Marks, s.Value.FaceMm)
        );
    });

    /// <summary>What is read twice is reckoned once.</summary>
    private readonly ImmutableArray<TapePlace> distinct = [.. places.Distinct()];
    private readonly ImmutableArray<int> at =
    [
        .. places.Select(p => places.Distinct().ToImmutableArray().IndexOf(p)),
    ];
    private Matrix<double>? ofDrawn;

    /// <summary>mm, a value a place.</summary>
    public Vector<double> At(Vector<double> p)
    {
        (TapedLoft starboard, TapedLoft port) = (
            LoftOf(p.SubVector(0, cells.Count)),
            LoftOf(p.SubVector(cells.Count, cells.Count))
        );
        double[] read = [.. distinct.Select(d => Read(d, starboard, port))];
        return Vector<double>.Build.Dense(places.Length, i => read[at[i]]);
    }

    /// <summary>mm of reading for a mm of each cell.</summary>
    public Matrix<double> Slopes(Vector<double> p)
    {
        bool drawnHull = p.All(c => c == 0);
        if (drawnHull && ofDrawn is { } made)
        {
            return made;
        }

        Matrix<double> each = OfDistinct(p),
            all = Matrix<double>.Build.Dense(
                places.Length,
                each.ColumnCount,
                (i, j) => each[at[i], j]
            );
        ofDrawn = drawnHull ? all : ofDrawn;
        return all;
    }

    private Matrix<double> OfDistinct(Vector<double> p)
    {
        int n = cells.Count;
        Matrix<double> h = Matrix<double>.Build.Dense(distinct.Length, 2 * n);
        Vector<double>[] errors = [p.SubVector(0, n), p.SubVector(n, n)];
        TapedLoft[] loft = [LoftOf(errors[0]), LoftOf(errors[1])];
        Parallel.For(
            0,
            2 * n,
            k =>
            {
                int side = k / n;
                Vector<double> moved = errors[side].Clone();
                moved[k % n] += StepMm;
                TapedLoft more = LoftOf(moved);
                moved[k % n] -= 2 * StepMm;
                TapedLoft less = LoftOf(moved);
                for (int i = 0; i < distinct.Length; i++)
                {
                    if (IsOf(distinct[i], side))
                    {
                        TapedLoft other = loft[1 - side];
                        h[i, k] =
                            (
                                side == 0
                                    ? Read(distinct[i], more, other)
                                        - Read(distinct[i], less, other)
                                    : Read(distinct[i], other, more)
                                        - Read(distinct[i], other, less)
                            ) / (2 * StepMm);
                    }
                }
            }
        );
        return h;
    }

    /// <summary>Whether a reading hangs on the cells of starboard, 0, or port, 1.</summary>
    private static bool IsOf(TapePlace place, int side) =>
        place.Side is not { } one || (one == Side.Port ? 1 : 0) == side;

    private TapedLoft LoftOf(Vector<double> p) => new(cells.Moved(job, p));

    private double Read(TapePlace place, TapedLoft starboard, TapedLoft port)
    {
        TapedLoft of = place.Side == Side.Port ? port : starboard;
        return place.Kind switch
        {
            TapeKind.HalfBreadth => of.At(place.Points[0]).Y,
            TapeKind.Height => place.Side is null
                ? (starboard.At(place.Points[0]).Z + port.At(place.Points[0]).Z) / 2
                : of.At(place.Points[0]).Z,
            TapeKind.Girth => of.Girth(place.Points[0].Station),
            TapeKind.Across => starboard.At(place.Points[0]).Y + port.At(place.Points[0]).Y,
            TapeKind.Diagonal => of.At(place.Points[0]).ChordTo(of.At(place.Points[1])),
            TapeKind.AlongKeel or TapeKind.AlongChine => Math.Abs(
                of.Along(
                    place.Kind == TapeKind.AlongChine,
                    place.Points[0].Station,
                    place.Points[1].Station
                )
            ),
            TapeKind.SeamLength => OfSeam(place, of),
            _ => throw new ArgumentException($"a {place.What} is no reading of the hull"),
        };
    }

    /// <summary>What was drawn, by the planks' own reckoning, and the change of what a tape between the same marks reads.</summary>
    private double OfSeam(TapePlace place, TapedLoft of)
    {
        TapedSeamPlace seam = seams[place.Edge!.Value];
        double? now = of.Between(seam.Marks, seam.FaceMm);
        return now is { } a && drawn.Value[place.Edge.Value] is { } b
            ? seam.DrawnMm + a - b
            : double.NaN;
    }
}
