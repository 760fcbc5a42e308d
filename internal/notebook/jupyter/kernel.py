"""A thin Jupyter kernel around nbrun, to open the notebooks in Jupyter itself
on a machine that has no Go kernel. It needs Debian's python3-ipykernel.

Jupyter starts one process of this for each notebook, in the notebook's folder.
Each cell goes to `nbrun -serve` as one line of JSON and comes back as one.
"""

import json
import os
import subprocess

from ipykernel.kernelapp import IPKernelApp
from ipykernel.kernelbase import Kernel


class GoKernel(Kernel):
    implementation = "nbrun"
    implementation_version = "1"
    language = "go"
    language_version = "1"
    language_info = {
        "name": "go",
        "file_extension": ".go",
        "mimetype": "text/x-go",
        "codemirror_mode": "go",
        "pygments_lexer": "go",
    }
    banner = "Go cells, compiled one by one"

    def __init__(self, **kwargs):
        super().__init__(**kwargs)
        self.runner = subprocess.Popen(
            [os.environ["NBRUN"], "-serve", os.getcwd()],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def do_execute(self, code, silent, store_history=True,
                   user_expressions=None, allow_stdin=False):
        self.runner.stdin.write(json.dumps({"code": code}) + "\n")
        self.runner.stdin.flush()
        line = self.runner.stdout.readline()
        if not line:
            answer = {"ok": False, "outputs": [{
                "output_type": "error", "ename": "runner",
                "evalue": "nbrun has ended; restart the kernel"}]}
        else:
            answer = json.loads(line)
        error = None
        for out in answer["outputs"] or []:
            kind = out.pop("output_type")
            if kind == "stream":
                content = {"name": out["name"], "text": out["text"]}
            elif kind == "display_data":
                content = {"data": out["data"], "metadata": {}}
            else:
                content = error = {
                    "ename": out["ename"], "evalue": out["evalue"],
                    "traceback": out.get("traceback", [])}
            if not silent:
                self.send_response(self.iopub_socket, kind, content)
        if error:
            return dict(error, status="error", execution_count=self.execution_count)
        return {"status": "ok", "execution_count": self.execution_count,
                "payload": [], "user_expressions": {}}

    def do_shutdown(self, restart):
        self.runner.stdin.close()
        self.runner.wait()
        return {"status": "ok", "restart": restart}


if __name__ == "__main__":
    IPKernelApp.launch_instance(kernel_class=GoKernel)
