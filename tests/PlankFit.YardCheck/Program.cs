using System.Diagnostics;
using System.Globalization;
using PlankFit.YardCheck;

// dotnet run -c Release --project tests/PlankFit.YardCheck [-- --there]
// Publishes the folders for a yard without an SDK and holds each to what it promises; the one for Linux is started in a root that has nothing else.
// --there: looks at those that were published before.
string checkout = AppContext.BaseDirectory;
while (!File.Exists(Path.Combine(checkout, "PlankFit.sln")))
{
    checkout =
        Path.GetDirectoryName(checkout)
        ?? throw new InvalidOperationException("the check runs outside the checkout");
}

string yard = Path.Combine(checkout, "output", "yard");
if (!args.Contains("--there"))
{
    var watch = Stopwatch.StartNew();
    using var publish = Process.Start(
        "dotnet",
        ["msbuild", Path.Combine(checkout, "src", "PlankFit.Yard"), "-v:q", "-nologo"]
    );
    await publish.WaitForExitAsync();
    if (publish.ExitCode != 0)
    {
        Console.WriteLine("yard: 0 passed, 1 failed, 0 skipped: the folders were not published");
        return 1;
    }

    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"published in {watch.Elapsed.TotalSeconds:0} s"
        )
    );
}

var told = new Told();
foreach (string system in (string[])["win-x64", "osx-arm64", "linux-x64"])
{
    new YardFolder(Path.Combine(yard, $"plankfit-{system}"), system, checkout).Check(told);
}

await new BareRoot(Path.Combine(yard, "plankfit-linux-x64")).Check(told);
return told.End();
