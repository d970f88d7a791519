using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Benchmarks;

/// <summary>The demo hulls, found from wherever the benchmark runs.</summary>
internal static class Demo
{
    public static string File(string hull)
    {
        string folder = AppContext.BaseDirectory;
        while (!System.IO.File.Exists(Path.Combine(folder, "PlankFit.sln")))
        {
            folder =
                Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("the benchmarks run outside the checkout");
        }

        return Path.Combine(folder, "hulls", hull, "job.toml");
    }

    public static Job Job(string hull) => JobReader.Read(File(hull)).Job!;

    public static HullSurface Hull(string hull)
    {
        Job job = Job(hull);
        return HullLoft.Build(job.Offsets, job.Hull.Panel);
    }
}
