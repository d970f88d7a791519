using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>A reading that could be taken, with its slopes over starboard's cells, then port's, and its own standard deviation, mm.</summary>
internal sealed record TapeCandidate(
    TapePlace Place,
    Vector<double> Slopes,
    double SigmaMm,
    double DrawnMm
)
{
    public SeamMarks? Marks { get; init; }
}

/// <summary>Everything that a tape can read on the bare hull, and the edges of planks.</summary>
internal static class TapeCandidates
{
    /// <summary>How many stations a tape along keel or chine spans at most, and how far a diagonal goes.</summary>
    private const int MostSpan = 2;

    /// <summary>On frames and keel, both sides and across.</summary>
    public static ImmutableArray<TapeCandidate> OfFrames(
        PlankingJob job,
        TableCells cells,
        TrustSpec trust
    )
    {
        Panel panel = job.Hull.Panel;
        string[] stations =
        [
            .. HullLoft
                .Stations(job.Offsets, panel)
                .Where(i => IsOpen(job.Offsets, panel, i))
                .Select(i => job.Offsets.Stations[i].Name),
        ];
        ImmutableArray<TapePlace> starboard = [.. Places(panel, stations)];
        var expected = new Expectations(
            job,
            cells,
            starboard,
            ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty
        );
        Vector<double> none = Vector<double>.Build.Dense(2 * cells.Count),
            drawn = expected.At(none);
        Matrix<double> slopes = expected.Slopes(none);
        ImmutableArray<TapeCandidate>.Builder all = ImmutableArray.CreateBuilder<TapeCandidate>();
        for (int i = 0; i < starboard.Length; i++)
        {
            TapePlace place = starboard[i];
            Vector<double> own = slopes.Row(i).SubVector(0, cells.Count);
            double sigma = TapeSigmas.Of(trust, place.Kind);
            if (!double.IsFinite(drawn[i]) || own.Any(h => !double.IsFinite(h)))
            {
                continue;
            }

            all.Add(new(place, Sided(own, Side.Starboard), sigma, drawn[i]));
            all.Add(new(place with { Side = Side.Port }, Sided(own, Side.Port), sigma, drawn[i]));
            if (place.Kind == TapeKind.HalfBreadth)
            {
                all.Add(
                    new(
                        place with
                        {
                            Kind = TapeKind.Across,
                            Side = null,
                        },
                        Sided(own, Side.Starboard) + Sided(own, Side.Port),
                        TapeSigmas.Of(trust, TapeKind.Across),
                        2 * drawn[i]
                    )
                );
            }
        }

        return all.ToImmutable();
    }

    /// <summary>Seams from keel to chine: between their marks on the bare hull, or the edges of fitted planks.</summary>
    public static IEnumerable<TapeCandidate> OfSeams(
        PlankSlopes slopes,
        TrustSpec trust,
        bool fitted,
        Func<PlankId, bool> which
    ) =>
        from plank in slopes.Planks
        let seam = plank.AfterSeam
        where seam is not null
        from side in new[] { Side.Starboard, Side.Port }
        let id = plank.Id with
        {
            Side = side,
        }
        where which(id)
        select new TapeCandidate(
            new(TapeKind.SeamLength, side, [], new(id, true)),
            Sided(fitted ? seam.Marched : seam.Held, side),
            TapeSigmas.Of(trust, TapeKind.SeamLength),
            seam.LengthMm
        )
        {
            Marks = seam.Marks,
        };

    /// <summary>One side's slopes over the cells of both.</summary>
    public static Vector<double> Sided(Vector<double> own, Side side)
    {
        Vector<double> both = Vector<double>.Build.Dense(2 * own.Count);
        both.SetSubVector(side == Side.Starboard ? 0 : own.Count, own.Count, own);
        return both;
    }

    /// <summary>Keel and chine are not one point there.</summary>
    private static bool IsOpen(OffsetTable table, Panel panel, int station)
    {
        const double openMm = 50;
        OffsetLine keel = table.Named(panel.Lower),
            chine = table.Named(panel.Upper);
        return keel.Has(station)
            && chine.Has(station)
            && double.Hypot(
                chine.HalfBreadthsMm[station]!.Value - keel.HalfBreadthsMm[station]!.Value,
                chine.HeightsMm[station]!.Value - keel.HeightsMm[station]!.Value
            ) > openMm;
    }

    private static IEnumerable<TapePlace> Places(Panel panel, string[] stations)
    {
        TapePlace Of(TapeKind kind, params (string Line, string Station)[] points) =>
            new(
                kind,
                Side.Starboard,
                [.. points.Select(p => new TapedPoint(p.Line, p.Station))],
                null
            );
        for (int i = 0; i < stations.Length; i++)
        {
            yield return Of(TapeKind.Girth, (panel.Lower, stations[i]), (panel.Upper, stations[i]));
            foreach (string line in new[] { panel.Lower, panel.Upper })
            {
                yield return Of(TapeKind.HalfBreadth, (line, stations[i]));
                yield return Of(TapeKind.Height, (line, stations[i]));
            }

            for (int k = 1; k <= MostSpan && i + k < stations.Length; k++)
            {
                yield return Of(
                    TapeKind.Diagonal,
                    (panel.Lower, stations[i]),
                    (panel.Upper, stations[i + k])
                );
                yield return Of(
                    TapeKind.Diagonal,
                    (panel.Lower, stations[i + k]),
                    (panel.Upper, stations[i])
                );
                yield return Of(
                    TapeKind.AlongKeel,
                    (panel.Lower, stations[i]),
                    (panel.Lower, stations[i + k])
                );
                yield return Of(
                    TapeKind.AlongChine,
                    (panel.Upper, stations[i]),
                    (panel.Upper, stations[i + k])
                );
            }
        }
    }
}
