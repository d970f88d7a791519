namespace PlankFit.Export.Files;

/// <summary>
/// Moves new files over old ones, keeping each old one until all is done. Where it is disposed before <see cref="Done"/>, every step is taken back.
/// Each file is at every moment whole, either the old one or the new.
/// </summary>
internal sealed class FileSwap(string folder, string news, string olds) : IDisposable
{
    private readonly Stack<Action> _back = [];
    private readonly HashSet<string> _emptied = new(StringComparer.Ordinal);

    public void Place(string name)
    {
        var (from, to, kept) = Paths(name);
        try
        {
            MakeFolder(to);
            if (File.Exists(to))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
                File.Replace(from, to, kept);
                _back.Push(() => File.Move(kept, to, overwrite: true));
            }
            else
            {
                File.Move(from, to);
                _back.Push(() => File.Delete(to));
            }
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.From(failure, to);
        }
    }

    public void Remove(string name)
    {
        var (_, to, kept) = Paths(name);
        try
        {
            if (File.Exists(to))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
                File.Move(to, kept);
                _back.Push(() => File.Move(kept, to));
                _emptied.Add(Path.GetDirectoryName(to)!);
            }
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.From(failure, to);
        }
    }

    public void Done()
    {
        _back.Clear();
        var root = Path.GetFullPath(folder);
        foreach (var emptied in _emptied.Where(f => Path.GetFullPath(f) != root))
        {
            AtomicFile.Quietly(() => Directory.Delete(emptied, recursive: false));
        }
    }

    public void Dispose()
    {
        while (_back.TryPop(out var back))
        {
            AtomicFile.Quietly(back);
        }
    }

    private (string From, string To, string Kept) Paths(string name) =>
        (Path.Combine(news, name), Path.Combine(folder, name), Path.Combine(olds, name));

    private void MakeFolder(string file)
    {
        var wanted = Path.GetDirectoryName(file)!;
        if (!Directory.Exists(wanted))
        {
            Directory.CreateDirectory(wanted);
            _back.Push(() => Directory.Delete(wanted, recursive: false));
        }
    }
}
