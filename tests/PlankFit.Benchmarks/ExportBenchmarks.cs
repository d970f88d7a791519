using BenchmarkDotNet.Attributes;
using PlankFit.Draughting.Files;
using PlankFit.Export.Checks;
using PlankFit.Export.Lists;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Benchmarks;

/// <summary>What is drawn and written, warm: views and check sheets of the 8 m launch (wanted: 100 ms), its planking.json, 300 files of 10 kB in an output folder.</summary>
[MemoryDiagnoser]
public class ExportBenchmarks
{
    private readonly byte[] content = new byte[10_000];
    private BottomPlan plan = null!;
    private string folder = null!;

    [GlobalSetup]
    public void Setup()
    {
        plan = BottomPlanner.Plan(Demo.Job("survey-launch")).Plan!;
        folder = Directory.CreateTempSubdirectory("plankfit-").FullName;
    }

    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, true);

    [Benchmark]
    public int ViewsAndCheckSheets()
    {
        int shapes = CheckBeforeSawing.Of(plan).Sum(d => d.Shapes.Length);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            shapes += BottomPlanView.Of(plan, layer).Shapes.Length;
            shapes += ShellExpansion.Of(plan, layer).Shapes.Length;
        }

        return shapes;
    }

    [Benchmark]
    public long PlankingNumbers()
    {
        using var stream = new MemoryStream(64 << 20);
        PlankingJson.Write(OnPlanks.Of(plan), stream);
        return stream.Length;
    }

    [Benchmark]
    public void ThreeHundredFiles()
    {
        using var files = OutputFolder.Begin(folder, "lay", default);
        for (int i = 0; i < 300; i++)
        {
            files.Write($"dxf/S1-{i}.dxf", content);
        }

        files.Commit();
    }
}
