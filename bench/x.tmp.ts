import { instance } from './instances.js';
import { explain } from '../src/planning/explain/explain.js';
import { explanationText } from '../src/report/explain-screen.js';
const [supplies='40', show='']=process.argv.slice(2);
for (const chains of ['none','adapters','all'] as const) for (const seed of [1]) for (const kind of ['budget','bricks','stock','volts'] as const) {
  const {board,catalogue}=instance({pedals:30,supplies:Number(supplies),chains,seed});
  let b:any=board,c:any=catalogue;
  if(kind==='budget') b={...board,policy:{...board.policy,budget:4000}};
  if(kind==='bricks') b={...board,policy:{...board.policy,bricks:2}};
  if(kind==='stock') c={...catalogue,supplies:catalogue.supplies.map(s=>({...s,stock:Number(s.id.length%2===0)}))};
  if(kind==='volts') b={...board,pedals:board.pedals.map((p,i)=>i===7?{...p,accepts:{kind:'list',millivolts:[24000]},draw:{kind:'flat',microamps:2000000},prefers:null}:p)};
  const t=performance.now();
  try{
  const e=await explain(b,c,{});
  const ms=performance.now()-t;
  console.log(chains,seed,kind,e.kind,ms.toFixed(0), e.kind==='stopped'?'':e.whole, e.kind==='impossible'?e.conflicts.map(x=>`${x.conflict.pedals.length}+${x.conflict.facts.length} ${x.conflict.size}`).join('; ')+' | '+e.ways.map(w=>w.change.kind+(w.cheapest?'':'?')).join(','):'');
  if(show===kind) console.log(explanationText(b,c,e,null,{width:100,colour:false}));
  }catch(x){console.log(chains,seed,kind,String(x), (x as Error).stack)}
}
