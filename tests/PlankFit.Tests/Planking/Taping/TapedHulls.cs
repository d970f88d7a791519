using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>Hulls that are out by chance as [trust] says, and what a tape that errs by chance reads on them.</summary>
internal sealed class TapedHulls
{
    private readonly Random chance;
    private readonly Matrix<double> root;

    public TapedHulls(Job job, TrustSpec trust, int seed)
    {
        (Job, Trust, chance) = (job, trust, new(seed));
        Cells = TableCells.Of(job.Planking);
        Prior = TwoSides.Of(trust, Cells);
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> evd = Prior.Evd(
            Symmetricity.Symmetric
        );
        root =
            evd.EigenVectors
            * Matrix<double>.Build.DenseOfDiagonalVector(
                evd.EigenValues.Map(e => Math.Sqrt(Math.Max(0, e.Real)))
            );
    }

    public Job Job { get; }

    public TrustSpec Trust { get; }

    public TableCells Cells { get; }

    public Matrix<double> Prior { get; }

    public static Job Launch { get; } =
        JobReader.Read(Path.Combine(DemoTables.Folder("survey-launch"), "job.toml")).Job!;

    /// <summary>Errors of both sides' cells.</summary>
    public Vector<double> Draw() =>
        root * Vector<double>.Build.Dense(root.ColumnCount, _ => Normal.Sample(chance, 0, 1));

    public double[] Expected(IEnumerable<TapePlace> places, Vector<double> p) =>
        [
            .. new Expectations(
                Job.Planking,
                Cells,
                [.. places],
                ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty
            ).At(p),
        ];

    /// <param name="times">How often each is read.</param>
    public ImmutableArray<TapeReading> Read(
        ImmutableArray<TapePlace> places,
        Vector<double> truth,
        int times = 1
    )
    {
        double[] there = Expected(places, truth);
        return
        [
            .. Enumerable
                .Range(0, times)
                .SelectMany(_ =>
                    places.Select(
                        (p, i) =>
                            new TapeReading(
                                p,
                                there[i] + Normal.Sample(chance, 0, TapeSigmas.Of(Trust, p.Kind))
                            )
                    )
                ),
        ];
    }

    public TapedHull Adjusted(ImmutableArray<TapeReading> readings) =>
        HullAdjuster.Of(
            Job.Planking with
            {
                AsBuilt = AsBuiltSpec.None with { Readings = readings },
            },
            Trust,
            ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty
        )!;

    public static TapePlace Point(TapeKind kind, string line, string station, Side? side) =>
        new(kind, side, [new(line, station)], null);

    public static TapePlace Two(
        TapeKind kind,
        (string Line, string Station) a,
        (string Line, string Station) b,
        Side side = Side.Starboard
    ) => new(kind, side, [new(a.Line, a.Station), new(b.Line, b.Station)], null);

    public static TapePlace Girth(string station, Side side = Side.Starboard) =>
        Two(TapeKind.Girth, ("keel edge", station), ("chine", station), side);
}
