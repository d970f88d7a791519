using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What a builder may do to a job after planks of it are sawn, by chance: any figure of the table, of a layer, of the ends; readings; another boat.</summary>
internal sealed record ChangeByChance(string What, Func<Job, Job> Made)
{
    public static readonly Gen<ChangeByChance> One = Gen.Select(
            Gen.Int[0, 27],
            Gen.Int[0, 1000],
            Gen.Double[-1, 1],
            Gen.Bool
        )
        .Select((kind, at, size, flag) => Of(kind, at, size, flag));

    /// <summary>One change, or two at once.</summary>
    public static readonly Gen<ChangeByChance> Any = Gen.Select(One, One, Gen.Int[0, 2])
        .Select(
            (a, b, both) =>
                both > 0 ? a : new ChangeByChance($"{a.What}; {b.What}", job => b.Made(a.Made(job)))
        );

    private static ChangeByChance Of(int kind, int at, double size, bool flag)
    {
        (string What, Func<Job, Job> Made) change = kind switch
        {
            0 => ("chine height", j => Cell(j, j.Hull.Panel.Upper, false, at, 30 * size)),
            1 => ("chine half-breadth", j => Cell(j, j.Hull.Panel.Upper, true, at, 20 * size)),
            2 => ("keel height", j => Cell(j, j.Hull.Panel.Lower, false, at, 10 * size)),
            3 => (
                "keel half-breadth",
                j => Cell(j, j.Hull.Panel.Lower, true, at, 5 * Math.Abs(size))
            ),
            4 => ("chine all along", j => Line(j, j.Hull.Panel.Upper, 15 * size)),
            5 => ("keel all along", j => Line(j, j.Hull.Panel.Lower, 8 * size)),
            6 => ("a station taken out", j => Removed(j, at)),
            7 => ("a station put in", j => Inserted(j, at, 5 * size)),
            8 => (
                "thickness of a layer",
                j => Layer(j, at, p => p with { ThicknessMm = p.ThicknessMm * (1 + (0.5 * size)) })
            ),
            9 => (
                "planks before",
                j =>
                    Added(
                        j,
                        0,
                        PlankLayer.Of(
                            "first of all",
                            3,
                            80,
                            flag ? Heads.Aft : Heads.Forward,
                            45,
                            null,
                            Hold.Width,
                            7.5,
                            0.5,
                            null
                        )
                    )
            ),
            10 => (
                "planks after",
                j =>
                    Added(
                        j,
                        j.Layers.Length,
                        PlankLayer.Of(
                            "last of all",
                            3,
                            80,
                            flag ? Heads.Aft : Heads.Forward,
                            45,
                            null,
                            Hold.Width,
                            7.5,
                            0.5,
                            null
                        )
                    )
            ),
            11 => ("cloth before", j => Added(j, 0, new ClothLayerSpec("lining", 1))),
            12 => ("cloth between", j => Added(j, 1, new ClothLayerSpec("core cloth", 1))),
            13 => (
                "a layer taken out",
                j =>
                    j.Layers.Length < 2
                        ? j
                        : j with
                        {
                            Layers = j.Layers.RemoveAt(at % j.Layers.Length),
                        }
            ),
            14 => (
                "width",
                j => Layer(j, at, p => p with { WidthMm = p.WidthMm * (1 + (0.45 * size)) })
            ),
            15 => (
                "angle",
                j =>
                    Layer(
                        j,
                        at,
                        p =>
                            p with
                            {
                                AngleDegrees = Math.Clamp(p.AngleDegrees + (20 * size), 25, 85),
                            }
                    )
            ),
            16 => (
                "heads",
                j =>
                    Layer(
                        j,
                        at,
                        p => p with { Heads = p.Heads == Heads.Aft ? Heads.Forward : Heads.Aft }
                    )
            ),
            17 => (
                "offsets to the other face",
                j =>
                    j with
                    {
                        Hull = j.Hull with
                        {
                            OffsetsAreTo =
                                j.Hull.OffsetsAreTo == OffsetsAreTo.Inside
                                    ? OffsetsAreTo.Outside
                                    : OffsetsAreTo.Inside,
                        },
                    }
            ),
            18 => (
                "gap and drift",
                j =>
                    Layer(
                        j,
                        at,
                        p =>
                            p with
                            {
                                GapMm = 0.1 + Math.Abs(size),
                                DriftDegrees = 3 + (10 * Math.Abs(size)),
                            }
                    )
            ),
            19 => (
                "hold",
                j =>
                    Layer(
                        j,
                        at,
                        p => p with { Hold = p.Hold == Hold.Width ? Hold.Angle : Hold.Width }
                    )
            ),
            20 => (
                "master",
                j => Layer(j, at, p => p with { MasterMm = Middle(j) + (150 * size) })
            ),
            21 => (
                "ends",
                j =>
                    j with
                    {
                        Ends = j.Ends with
                        {
                            Lower = flag ? EndRule.LeftLong(20) : EndRule.Fit,
                            Upper = flag
                                ? EndRule.Fit
                                : EndRule.LeftLong(10 + (10 * Math.Abs(size))),
                        },
                    }
            ),
            22 => (
                "keel's side",
                j =>
                    j with
                    {
                        Hull = j.Hull with
                        {
                            KeelSide =
                                j.Hull.KeelSide == KeelSide.Plumb
                                    ? KeelSide.SquareToPlank
                                    : KeelSide.Plumb,
                        },
                    }
            ),
            23 => (
                "units",
                j => j with { Units = flag ? LengthUnit.FeetInchesEighths : LengthUnit.Inch }
            ),
            24 => ("girths", j => Girths(j, at, 8 * size, flag)),
            25 => ("moved bodily", j => Moved(j, flag ? 2500 : 30 * size, 60 * size)),
            26 => (
                "stagger",
                j => Layer(j, 2, p => p with { Stagger = flag ? null : 0.3 + (0.2 * size) })
            ),
            _ => ("another boat", j => Moved(j, 20 * size, 400)),
        };
        return new($"{change.What}, {at}, {size}, {flag}", change.Made);
    }

    private static double Middle(Job job) =>
        (job.Offsets.Stations[0].PositionMm + job.Offsets.Stations[^1].PositionMm) / 2;

    private static Job With(Job job, string line, Func<OffsetLine, OffsetLine> change) =>
        job with
        {
            Offsets = new(
                job.Offsets.Stations,
                [.. job.Offsets.Lines.Select(l => l.Name == line ? change(l) : l)]
            ),
        };

    private static Job Cell(Job job, string line, bool breadth, int at, double by)
    {
        // Not the first station: where keel and chine meet in a point both would have to move.
        int i = 1 + (at % (job.Offsets.Stations.Length - 1));
        return With(
            job,
            line,
            l =>
                breadth
                    ? l with
                    {
                        HalfBreadthsMm = l.HalfBreadthsMm.SetItem(i, l.HalfBreadthsMm[i] + by),
                    }
                    : l with
                    {
                        HeightsMm = l.HeightsMm.SetItem(i, l.HeightsMm[i] + by),
                    }
        );
    }

    private static Job Line(Job job, string line, double by) =>
        With(
            job,
            line,
            l => l with { HeightsMm = [.. l.HeightsMm.Select((h, i) => i == 0 ? h : h + by)] }
        );

    private static Job Removed(Job job, int at)
    {
        int n = job.Offsets.Stations.Length;
        if (n < 6)
        {
            return job;
        }

        int i = 1 + (at % (n - 2));
        return job with
        {
            Offsets = new(
                job.Offsets.Stations.RemoveAt(i),
                [
                    .. job.Offsets.Lines.Select(l =>
                        l with
                        {
                            PositionsMm = l.PositionsMm.IsEmpty
                                ? l.PositionsMm
                                : l.PositionsMm.RemoveAt(i),
                            HeightsMm = l.HeightsMm.RemoveAt(i),
                            HalfBreadthsMm = l.HalfBreadthsMm.RemoveAt(i),
                        }
                    ),
                ]
            ),
        };
    }

    private static Job Inserted(Job job, int at, double by)
    {
        int i = 1 + (at % (job.Offsets.Stations.Length - 1));
        ImmutableArray<double?> Between(ImmutableArray<double?> cells, double off) =>
            cells.IsEmpty ? cells : cells.Insert(i, ((cells[i - 1] + cells[i]) / 2) + off);
        double x =
            (job.Offsets.Stations[i - 1].PositionMm + job.Offsets.Stations[i].PositionMm) / 2;
        return job with
        {
            Offsets = new(
                job.Offsets.Stations.Insert(i, new Station("put in", x)),
                [
                    .. job.Offsets.Lines.Select(l =>
                        l with
                        {
                            PositionsMm = Between(l.PositionsMm, 0),
                            HeightsMm = Between(
                                l.HeightsMm,
                                l.Name == job.Hull.Panel.Upper ? by : 0
                            ),
                            HalfBreadthsMm = Between(l.HalfBreadthsMm, 0),
                        }
                    ),
                ]
            ),
        };
    }

    private static Job Layer(Job job, int at, Func<PlankLayerSpec, PlankLayerSpec> change)
    {
        int i = at % job.Layers.Length;
        return job.Layers[i] is PlankLayerSpec planks
            ? job with
            {
                Layers = job.Layers.SetItem(i, change(planks)),
            }
            : job;
    }

    private static Job Added(Job job, int at, LayerSpec layer) =>
        job.Layers.Any(l => l.Name == layer.Name)
            ? job
            : job with
            {
                Layers = job.Layers.Insert(Math.Min(at, job.Layers.Length), layer),
            };

    private static Job Girths(Job job, int at, double by, bool port)
    {
        BottomPlan drawn = WholeBottomTests.Planned(job);
        string station = drawn.Hull.Stations[1 + (at % (drawn.Hull.Stations.Length - 1))].Name;
        Side side = port ? Side.Port : Side.Starboard;

        // What the tape would read as drawn, from a plan with a reading that is nothing like it.
        AsBuiltSpec Read(double mm) => AsBuiltSpec.None with { Girths = [new(station, side, mm)] };
        double rough = drawn.PlankLayers.First().Starboard.Max(p => p.NetLengthMm) / 2;
        GirthRow? row = BottomPlanner
            .Plan(job with { AsBuilt = Read(rough) })
            .Plan?.AsBuilt?.Girths[side]
            .FirstOrDefault(r => r.Station == station);
        return row is null ? job : job with { AsBuilt = Read(row.DrawnMm + by) };
    }

    private static Job Moved(Job job, double x, double z) =>
        job with
        {
            Offsets = new(
                [.. job.Offsets.Stations.Select(s => s with { PositionMm = s.PositionMm + x })],
                [
                    .. job.Offsets.Lines.Select(l =>
                        l with
                        {
                            PositionsMm = [.. l.PositionsMm.Select(p => p + x)],
                            HeightsMm = [.. l.HeightsMm.Select(h => h + z)],
                        }
                    ),
                ]
            ),
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec { MasterMm: { } m } p ? p with { MasterMm = m + x } : l
                ),
            ],
        };
}
