using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Trust;

/// <summary>
/// A bottom's planks as drawn, with every choice made: laid again by the same choices on a hull a little different, their numbers are a function of the table that has
/// slopes.
/// </summary>
internal sealed class HeldPlan
{
    private readonly ImmutableArray<HeldLayer> layers;
    private readonly ImmutableArray<(string Layer, string Station)> keel;

    private HeldPlan(
        PlankingJob job,
        ImmutableArray<HeldLayer> layers,
        ImmutableArray<(string, string)> keel
    ) => (Job, this.layers, this.keel) = (job, layers, keel);

    /// <summary>As drawn: nothing measured, nothing sawn.</summary>
    public PlankingJob Job { get; }

    public static HeldPlan Of(Planked planked, CancellationToken stop)
    {
        PlankingJob job = planked.Job with { AsBuilt = AsBuiltSpec.None };
        LaidLayer[] laid = [.. planked.Workings?.Layers.Where(l => l.From.AsDrawn is null) ?? []];
        if (laid.Length == 0)
        {
            laid = [.. PlankingPlanner.Lay(job, null, null, stop).Workings!.Layers];
        }

        int[] index =
        [
            .. Enumerable.Range(0, job.Layers.Length).Where(i => job.Layers[i] is PlankLayerSpec),
        ];
        HullSurface hull = laid[0].From.Hull;
        return new(
            job,
            [.. laid.Select(l => new HeldLayer(l, index[l.Number - 1]))],
            [
                .. planked.DrawnKeel.Layers.SelectMany(k =>
                    hull.Stations.Where(s => !(s.PositionMm < k.Spec.FromMm))
                        .Select(s => (k.Spec.Name, s.Name))
                ),
            ]
        );
    }

    public ImmutableArray<SureNumber> Numbers =>
        [
            .. layers.SelectMany(l => l.Numbers),
            .. keel.Select(k => new SureNumber(null, NumberKind.KeelHalfWidth) { Keel = k }),
        ];

    /// <summary>Of starboard, layer by layer.</summary>
    public ImmutableArray<PlankId> Planks => [.. layers.SelectMany(l => l.Planks)];

    /// <summary>The lengths of all planks on a job a little different from the one drawn, whichever edges their ends meet there, mm.</summary>
    public double[] LengthsOn(PlankingJob job)
    {
        double[] lengths = new double[layers.Sum(l => l.Planks.Length)];
        if (
            Tried.Or(() => HullLoft.Build(job.Offsets, job.Hull.Panel)) is not { } hull
            || Tried.Or(() => BuiltKeel.Of(job, hull, Side.Starboard)) is not { } built
        )
        {
            Array.Fill(lengths, double.NaN);
            return lengths;
        }

        int at = 0;
        foreach (HeldLayer layer in layers)
        {
            layer.LengthsInto(lengths.AsSpan(at, layer.Planks.Length), job, hull, built);
            at += layer.Planks.Length;
        }

        return lengths;
    }

    /// <summary>The numbers on a job a little different from the one drawn, in order; NaN where a plank does not have one.</summary>
    public double[] On(PlankingJob job)
    {
        double[] numbers = new double[layers.Sum(l => l.Count) + keel.Length];
        if (
            Tried.Or(() => HullLoft.Build(job.Offsets, job.Hull.Panel)) is not { } hull
            || Tried.Or(() => BuiltKeel.Of(job, hull, Side.Starboard)) is not { } built
        )
        {
            Array.Fill(numbers, double.NaN);
            return numbers;
        }

        int at = 0;
        foreach (HeldLayer layer in layers)
        {
            layer.Into(numbers.AsSpan(at, layer.Count), job, hull, built);
            at += layer.Count;
        }

        foreach ((string name, string station) in keel)
        {
            double x = hull.Stations.First(s => s.Name == station).PositionMm;
            numbers[at++] = built.Layers.First(k => k.Spec.Name == name).HalfWidthAt(x);
        }

        return numbers;
    }
}
