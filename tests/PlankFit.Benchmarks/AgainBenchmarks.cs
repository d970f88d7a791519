using BenchmarkDotNet.Attributes;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Benchmarks;

/// <summary>The 8 m launch with everything, warm: a whole plan, and the same with one thing changed, planned again from it.</summary>
[MemoryDiagnoser]
public class AgainBenchmarks
{
    private BottomPlan plan = null!;
    private Job spaced = null!,
        turned = null!;

    [GlobalSetup]
    public void Setup()
    {
        Job job = Demo.Job("survey-launch");
        plan = BottomPlanner.Plan(job).Plan!;
        spaced = job with
        {
            Fastenings = job.Fastenings! with
            {
                Usual = job.Fastenings.Usual with { SpacingMm = 60 },
            },
        };
        turned = job with
        {
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec { Name: "outer" } p ? p with { AngleDegrees = 47 } : l
                ),
            ],
        };
    }

    [Benchmark(Baseline = true)]
    public int Whole() => Findings(BottomPlanner.Plan(plan.Job));

    [Benchmark]
    public int NothingChanged() => Findings(BottomPlanner.Again(plan, plan.Job));

    [Benchmark]
    public int AnotherSpacing() => Findings(BottomPlanner.Again(plan, spaced));

    [Benchmark]
    public int AnotherAngleOfOneLayer() => Findings(BottomPlanner.Again(plan, turned));

    private static int Findings(PlanResult planned) => planned.Findings.Length;
}
