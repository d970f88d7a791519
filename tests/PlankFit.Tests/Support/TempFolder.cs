namespace PlankFit.Tests.Support;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
public sealed class TempFolder : IDisposable
{
    public TempFolder() => Path = Directory.CreateTempSubdirectory("plankfit-test-").FullName;

    public string Path { get; }

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
