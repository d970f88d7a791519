using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The demo launch with all files that a job may ask for, laid once for all tests of a class.</summary>
public sealed class LaidLaunch : IDisposable
{
    private readonly TempFolder folder = new();

    public LaidLaunch()
    {
        Job = folder.File("job/job.toml");
        Directory.CreateDirectory(folder.File("job"));
        File.WriteAllText(
            Job,
            File.ReadAllText(JobFile)
                + "\n[output]\ndxf = \"both\"\nsheets = \"book-and-single\"\ndrawings = \"svg-png\"\n"
        );
        File.Copy(
            Path.Combine(Path.GetDirectoryName(JobFile)!, "offsets.csv"),
            folder.File("job/offsets.csv")
        );
        Report = LayRun.Run(new(Job, Folder, false), new Progress<PlanProgress>(), new(), default);
    }

    public static string JobFile => Path.Combine(DemoTables.Folder("survey-launch"), "job.toml");

    /// <summary>Its job, which asks for all.</summary>
    public string Job { get; }

    public string Folder => folder.File("out");

    public RunReport Report { get; }

    public int Planks(string prefix) =>
        Directory.EnumerateFiles(Path.Combine(Folder, "dxf", "r12"), prefix + "-*.dxf").Count();

    public void Dispose() => folder.Dispose();
}
