using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using PlankFit.Hashing;

namespace PlankFit.Pages.Guarding;

/// <summary>
/// Who comes by the shop's network brings the code that stands on the terminal, once, and is known by a cookie from then on, until the program ends. A code lets one
/// browser in; then, and after too many wrong ones, there is another. This computer itself needs none.
/// </summary>
/// <param name="network">The address that is served besides this computer's own.</param>
/// <param name="say">Told every new code; null once there is none any more, since too many were guessed at.</param>
internal sealed class Door(IPAddress network, Action<string?> say)
{
    public const string Cookie = "plankfit";
    public const string Path = "/code";
    public const int Digits = 8;

    /// <summary>Wrong codes from one address, after which it is not heard until there is another code.</summary>
    public const int MostFromOne = 5;

    /// <summary>Wrong codes in all, after which there is another: of a hundred million a guess so finds one of three million times.</summary>
    public const int MostInAll = 30;

    /// <summary>So often another code is drawn for wrong ones; then the door stays shut until the program is started again. 90 guesses in all: less than one in a million.</summary>
    public const int MostRounds = 3;

    private const int TokenBytes = 32;

    /// <summary>What may be seen without a code: the page that asks for it.</summary>
    private static readonly ImmutableHashSet<string> Open =
    [
        Path,
        "/favicon.ico",
        "/rooms/frame/frame.css",
        "/rooms/code/code.css",
        "/rooms/code/code.js",
    ];

    private readonly Lock gate = new();
    private readonly Dictionary<IPAddress, int> wrong = [];
    private readonly List<byte[]> known = [];
    private string code = "";
    private int rounds;

    /// <summary>Makes the first code.</summary>
    public void Begin()
    {
        lock (gate)
        {
            Renew();
        }
    }

    public async Task Run(HttpContext context, RequestDelegate next)
    {
        if (
            !network.Equals(context.Connection.LocalIpAddress)
            || Open.Contains(context.Request.Path.Value ?? "")
            || IsKnown(context.Request.Cookies[Cookie])
        )
        {
            await next(context);
            return;
        }

        if (HttpMethods.IsGet(context.Request.Method) && context.Request.Path == "/")
        {
            // The code may stand behind the #, which no server is sent and a redirection keeps.
            context.Response.Redirect(Path);
            return;
        }

        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        await context.Response.WriteAsync(
            "The code that stands on the terminal is asked for at /code."
        );
    }

    /// <summary>Lets a browser in that has the code; the answer to a wrong one is the same whatever is wrong with it.</summary>
    public bool Enter(HttpContext context, string? said)
    {
        IPAddress from = context.Connection.RemoteIpAddress ?? IPAddress.None;
        string? token = null;
        lock (gate)
        {
            int tries = wrong.GetValueOrDefault(from);
            // Compared whole and as hashes, so that neither time nor length tells anything.
            bool same = CryptographicOperations.FixedTimeEquals(Hash(said ?? ""), Hash(code));
            // Before the first there is none, and saying nothing is not saying it.
            if (same && code.Length > 0 && tries < MostFromOne && rounds < MostRounds)
            {
                token = Convert.ToHexStringLower(Unguessable.Bytes(TokenBytes));
                known.Add(Hash(token));
                rounds = 0;
                Renew();
            }
            else
            {
                wrong[from] = tries + 1;
                if (rounds < MostRounds && wrong.Values.Sum() >= MostInAll)
                {
                    rounds++;
                    if (rounds < MostRounds)
                    {
                        Renew();
                    }
                    else
                    {
                        say(null);
                    }
                }
            }
        }

        if (token is null)
        {
            return false;
        }

        context.Response.Cookies.Append(
            Cookie,
            token,
            new()
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Path = "/",
            }
        );
        return true;
    }

    private bool IsKnown(string? token)
    {
        if (token is null)
        {
            return false;
        }

        byte[] hash = Hash(token);
        lock (gate)
        {
            // All of them are compared, whichever it is.
            return known.Aggregate(
                false,
                (found, k) => CryptographicOperations.FixedTimeEquals(k, hash) | found
            );
        }
    }

    private void Renew()
    {
        code = Unguessable.Digits(Digits);
        wrong.Clear();
        say(code);
    }

    private static byte[] Hash(string text) => Sha256Hash.Of(Encoding.UTF8.GetBytes(text));
}
