using System.Collections.Frozen;
using System.Reflection;
using Microsoft.AspNetCore.Http;

namespace PlankFit.Pages.Serving;

/// <summary>The page's own files, which lie in the program: what is asked for is looked up whole, and no path is ever put together.</summary>
internal static class RoomFiles
{
    private const string Folder = "rooms/";

    private static readonly FrozenDictionary<string, byte[]> All = Read();

    private static readonly FrozenDictionary<string, string> Kinds = new Dictionary<string, string>
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    }.ToFrozenDictionary();

    public static IEnumerable<string> Names => All.Keys;

    public static bool Has(string name) => All.ContainsKey(name);

    public static IResult Of(string name) =>
        All.TryGetValue(name, out byte[]? bytes)
        && Kinds.TryGetValue(Path.GetExtension(name), out string? kind)
            ? TypedResults.Bytes(bytes, kind)
            : TypedResults.NotFound();

    private static FrozenDictionary<string, byte[]> Read()
    {
        Assembly here = typeof(RoomFiles).Assembly;
        return here.GetManifestResourceNames()
            .Select(n => n.Replace('\\', '/'))
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
            .ToFrozenDictionary(n => n[Folder.Length..], n => Bytes(here, n));
    }

    private static byte[] Bytes(Assembly here, string name)
    {
        using Stream stream = here.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
